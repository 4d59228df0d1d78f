import { hostname } from 'node:os'
import { certificate } from './certificate.mjs'
import { lanAddresses } from './lanAddresses.mjs'
import { staticServer } from './staticServer.mjs'

/**
 * Serves a folder by https to all on this network, with a certificate made on the spot.
 *
 * @param {string} folder
 * @param {{ firstPort: number, tries: number }} ports
 * @returns {Promise<{ urls: string[], cert: string, close: () => Promise<void> }>} An address for each way in, this
 *   machine's own last.
 */
export async function serveToLan(folder, ports) {
  const addresses = lanAddresses()
  const secure = certificate([hostname(), 'localhost', ...addresses, '127.0.0.1', '::1'])
  const { port, close } = await staticServer(folder, { ...ports, host: '::', secure }).catch((error) => {
    if (error.code !== 'EAFNOSUPPORT' && error.code !== 'EADDRNOTAVAIL') throw error
    return staticServer(folder, { ...ports, host: '0.0.0.0', secure }) // a machine without IPv6
  })
  const urls = [...addresses, '127.0.0.1'].map(
    (address) => `https://${address.includes(':') ? `[${address}]` : address}:${port}/`,
  )
  return { urls, cert: secure.cert, close }
}
