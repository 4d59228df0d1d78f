// Draws the icons of the home screen out of public/icon.svg, by `npx tsx tests/support/makeIcons.ts`.
import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { chromium } from 'playwright-core'
import { chromiumPath } from './chromiumPath.mjs'

const folder = resolve(import.meta.dirname, '../../public')
const svg = readFileSync(resolve(folder, 'icon.svg'), 'utf8')
/** Masks cut to a circle of 80 % of the width: paper to the edges, the drawing within. https://www.w3.org/TR/appmanifest/#icon-masks */
const whole = svg.replace(/ rx="14"/, '').replace('viewBox="0 0 64 64"', 'viewBox="-10 -10 84 84"')
const maskable = whole.replace('<rect width="64" height="64"', '<rect x="-10" y="-10" width="84" height="84"')
const apple = maskable.replaceAll(/-10 -10 84 84/g, '-4 -4 72 72')

const ICONS = [
  { name: 'icon-192.png', px: 192, drawing: svg },
  { name: 'icon-512.png', px: 512, drawing: svg },
  { name: 'icon-maskable-192.png', px: 192, drawing: maskable },
  { name: 'icon-maskable-512.png', px: 512, drawing: maskable },
  { name: 'icon-apple-180.png', px: 180, drawing: apple },
]

const executablePath = chromiumPath()
if (executablePath === null) throw new Error('no Chromium: run node tests/support/ensureChromium.mjs first')
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })
for (const { name, px, drawing } of ICONS) {
  const page = await browser.newPage({ viewport: { width: px, height: px } })
  await page.setContent(`<style>body{margin:0}svg{display:block;width:${px}px;height:${px}px}</style>${drawing}`)
  writeFileSync(resolve(folder, name), await page.screenshot({ omitBackground: true }))
  await page.close()
}
await browser.close()
