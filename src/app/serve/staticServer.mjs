import { readFileSync } from 'node:fs'
import { open } from 'node:fs/promises'
import { createServer } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
import { extname, join, resolve, sep } from 'node:path'

const policy = JSON.parse(readFileSync(resolve(import.meta.dirname, 'contentPolicy.json'), 'utf8'))
const HEADERS = {
  'Content-Security-Policy': [...Object.entries(policy), ['frame-ancestors', "'none'"]]
    .map((rule) => rule.join(' '))
    .join('; '),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cache-Control': 'no-cache',
}
const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.csv': 'text/csv; charset=utf-8',
  '.md': 'text/plain; charset=utf-8',
  '.wav': 'audio/wav',
}

/**
 * Serves the files of a folder, to this machine only unless told otherwise.
 *
 * @param {string} folder
 * @param {{ firstPort: number, tries: number, host?: string, secure?: { key: string, cert: string } }} ports
 *   The first free port is taken; port 0 is any free one. `host` is the address to listen at; with `secure`, by https.
 * @returns {Promise<{ url: string, port: number, close: () => Promise<void> }>}
 */
export async function staticServer(folder, { firstPort, tries, host = '127.0.0.1', secure }) {
  const serve = (request, response) => {
    answer(folder, request, response).catch(() => response.destroy())
  }
  const server = secure ? createSecureServer(secure, serve) : createServer(serve)
  const port = await listenOnFreePort(server, firstPort, tries, host)
  return {
    url: `${secure ? 'https' : 'http'}://127.0.0.1:${port}/`,
    port,
    close: () => new Promise((done) => server.close(() => done()).closeAllConnections()),
  }
}

async function answer(folder, request, response) {
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405)
  const path = pathOf(folder, request.url ?? '/')
  if (path === null) return refuse(response, 404)
  let file
  try {
    file = await open(path)
    const stat = await file.stat()
    if (!stat.isFile()) return refuse(response, 404)
    const type = TYPES[extname(path)] ?? 'application/octet-stream'
    response.writeHead(200, { ...HEADERS, 'Content-Type': type, 'Content-Length': stat.size })
    response.end(request.method === 'HEAD' ? undefined : await file.readFile())
  } catch (error) {
    if (error.code !== 'ENOENT' && error.code !== 'ENOTDIR') throw error
    refuse(response, 404)
  } finally {
    await file?.close()
  }
}

/** Where in the folder an address lies; `null` for one that leaves it. */
function pathOf(folder, url) {
  let name
  try {
    name = decodeURIComponent(new URL(url, 'http://localhost').pathname)
  } catch {
    return null
  }
  const path = resolve(join(folder, name.endsWith('/') ? `${name}index.html` : name))
  return path.startsWith(resolve(folder) + sep) && !name.includes('\0') ? path : null
}

function refuse(response, status) {
  response.writeHead(status, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8' })
  response.end(status === 405 ? 'Only reading is possible here.\n' : 'There is nothing at this address.\n')
}

async function listenOnFreePort(server, firstPort, tries, host) {
  for (let port = firstPort; port < firstPort + tries; port++) {
    try {
      await new Promise((done, failed) => {
        server.once('error', failed)
        server.listen(port, host, () => {
          server.off('error', failed)
          done()
        })
      })
      return server.address().port
    } catch (error) {
      if (error.code !== 'EADDRINUSE' && error.code !== 'EACCES') throw error
    }
  }
  throw new Error(`ports ${firstPort} to ${firstPort + tries - 1} are all taken; end one of the programs that use them`)
}
