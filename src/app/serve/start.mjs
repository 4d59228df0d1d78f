// The one command for a fresh machine: sets up what is missing, builds what is old, serves, and prints one address.
import { resolve } from 'node:path'
import { staticServer } from './staticServer.mjs'
import { buildWhenNeeded, installWhenNeeded } from './upToDate.mjs'

const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Node ${process.versions.node} is too old; install Node 20.19 or newer and try again`)
  process.exit(2)
}

try {
  installWhenNeeded()
  buildWhenNeeded()
  const { url } = await staticServer(resolve(import.meta.dirname, '../../../dist/app'), { firstPort: 4173, tries: 50 })
  console.log(`\nYardhark is at ${url}\nEnd it with Ctrl+C.`)
} catch (error) {
  console.error(`start: ${error.message}`)
  process.exit(1)
}
