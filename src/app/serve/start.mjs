// The one command for a fresh machine: sets up what is missing, builds what is old, serves, and prints one address.
import { resolve } from 'node:path'
import { serveToLan } from './serveToLan.mjs'
import { staticServer } from './staticServer.mjs'
import { buildWhenNeeded, installWhenNeeded } from './upToDate.mjs'

const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Node ${process.versions.node} is too old; install Node 20.19 or newer and try again`)
  process.exit(2)
}

const options = process.argv.slice(2)
const unknown = options.find((option) => option !== '--lan')
if (unknown !== undefined) {
  console.error(`start: ${unknown} is not known; there is npm start, and npm start -- --lan for phones on this network`)
  process.exit(2)
}

try {
  installWhenNeeded()
  buildWhenNeeded()
  const folder = resolve(import.meta.dirname, '../../../dist/app')
  const ports = { firstPort: 4173, tries: 50 }
  if (options.includes('--lan')) {
    const { urls } = await serveToLan(folder, ports)
    console.log(`
Yardhark is at
${urls.map((url) => `  ${url}`).join('\n')}
for every phone on this network. The phone will say that the connection is not private: nobody vouches for the
certificate, which was made a moment ago on this machine. On your own network choose "Advanced", then "Proceed"; the
phone asks again after each start. The microphone works then, and recordings are kept. A copy that starts without a
signal is not kept this way: for that put dist/app on a web server with https (README.md, "On the crew's phones").
End it with Ctrl+C.`)
  } else {
    const { url } = await staticServer(folder, ports)
    console.log(`\nYardhark is at ${url}\nEnd it with Ctrl+C.`)
  }
} catch (error) {
  console.error(`start: ${error.message}`)
  process.exit(1)
}
