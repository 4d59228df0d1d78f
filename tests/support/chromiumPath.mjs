import { existsSync } from 'node:fs'

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

/** @returns {string | null} Where a Chromium lies; `null` when there is none. */
export function chromiumPath() {
  return [process.env.CHROMIUM_PATH, ...PLACES].find((path) => path && existsSync(path)) ?? null
}
