// Finds a Chromium for the tests of the page, or installs Debian's. Prints nothing when it is there.
import { spawnSync } from 'node:child_process'
import { chromiumPath } from './chromiumPath.mjs'

if (chromiumPath() === null) {
  console.log('No Chromium found; installing the one of this system.')
  const asRoot = process.getuid?.() === 0 ? [] : ['sudo', '-n']
  const apt = (...args) => {
    const [command, ...rest] = [...asRoot, 'apt-get', ...args]
    return spawnSync(command, rest, {
      stdio: ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    })
  }
  if (apt('install', '-y', '--no-install-recommends', 'chromium').status !== 0) {
    apt('update')
    apt('install', '-y', '--no-install-recommends', 'chromium')
  }
  if (chromiumPath() === null) {
    console.error('ensureChromium: no Chromium; install one (apt-get install chromium), or name it in CHROMIUM_PATH')
    process.exit(1)
  }
}
