import type { OfflineAsk, OfflineFault, OfflineFile, OfflineTold } from '../messages'

// The build puts these two before this file, which becomes a script by itself: nothing may be imported but types.
declare const OFFLINE_FILES: readonly OfflineFile[]
declare const OFFLINE_VERSION: string

const worker = self as unknown as ServiceWorkerGlobalScope

/** Of this folder: caches belong to all folders of a host. */
const OURS = `yardhark ${worker.registration.scope} `
/** Files of this version, by address. One cache a version, so that an unfinished one is never mixed with one in use. */
const OWN = `${OURS}${OFFLINE_VERSION}`
/** Holds the name of the cache that pages are served from: a newer one is taken only when somebody says so. */
const CHOICE = `${OURS}choice`
const CHOICE_KEY = 'https://choice.invalid/'
const AT_ONCE = 4

class Unkept extends Error {
  constructor(
    readonly why: OfflineFault,
    readonly file: string,
  ) {
    super(`${file}: ${why}`)
  }
}

worker.addEventListener('install', (event) => event.waitUntil(install()))
worker.addEventListener('activate', (event) => event.waitUntil(begin()))
worker.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url)
  if (event.request.method !== 'GET' || !url.href.startsWith(worker.registration.scope)) return
  event.respondWith(serve(event.request, url))
})
worker.addEventListener('message', (event) => {
  const ask = event.data as OfflineAsk
  event.waitUntil(ask === 'take' ? take() : check())
})

async function install(): Promise<void> {
  await keepAll()
  const chosen = await chosenName()
  if (chosen === null) await choose(OWN)
  const needed = [OWN, CHOICE, chosen]
  for (const name of await caches.keys()) {
    if (name.startsWith(OURS) && !needed.includes(name)) await caches.delete(name)
  }
  await worker.skipWaiting() // pages are served as before until the newer version is chosen
}

async function begin(): Promise<void> {
  await worker.clients.claim()
  await tell({ kind: 'kept', newer: await isNewer() })
}

async function check(): Promise<void> {
  try {
    await keepAll()
  } catch {
    return // told already
  }
  await tell({ kind: 'kept', newer: await isNewer() })
}

/** Whether pages are served from another version than this. */
async function isNewer(): Promise<boolean> {
  const chosen = await chosenName()
  return chosen !== null && chosen !== OWN
}

async function take(): Promise<void> {
  await choose(OWN)
  await tell({ kind: 'taken' })
}

/** @returns `null` when none was chosen yet, or the browser has thrown it away. */
async function chosenName(): Promise<string | null> {
  const kept = await (await caches.open(CHOICE)).match(CHOICE_KEY)
  const name = (await kept?.text()) ?? ''
  return name !== '' && (await caches.has(name)) ? name : null
}

async function choose(name: string): Promise<void> {
  await (await caches.open(CHOICE)).put(CHOICE_KEY, new Response(name))
}

/** Fetches what is missing, so that a copy that was broken off goes on where it stopped. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(OWN)
  const there = new Set((await cache.keys()).map((request) => request.url))
  const missing = OFFLINE_FILES.filter(({ path }) => !there.has(addressOf(path)))
  let done = OFFLINE_FILES.length - missing.length
  const newer = await isNewer()
  const next = async (): Promise<void> => {
    for (let file = missing.shift(); file !== undefined; file = missing.shift()) {
      await keep(cache, file)
      done++
      await tell({ kind: 'keeping', newer, done, total: OFFLINE_FILES.length })
    }
  }
  // After a failure nothing more is begun, and what is on its way is still kept.
  const lanes = Array.from({ length: AT_ONCE }, () => next().finally(() => missing.splice(0)))
  const failed = (await Promise.allSettled(lanes)).find((lane) => lane.status === 'rejected')
  if (failed === undefined) return
  const { reason } = failed
  if (reason instanceof Unkept) await tell({ kind: 'failed', newer, why: reason.why, file: reason.file })
  throw reason
}

/**
 * Keeps one file, out of an older version where it is the same there. A sign-in page that some networks give instead,
 * or half of a newer version, is not taken for it.
 */
async function keep(cache: Cache, { path, sha256 }: OfflineFile): Promise<void> {
  const url = addressOf(path)
  const older = await caches.match(url)
  if (older !== undefined && (await digest(await older.clone().arrayBuffer())) === sha256) {
    return put(cache, url, older, path)
  }
  const fetched = await fetch(url, { cache: 'no-cache', credentials: 'same-origin' }).catch(() => null)
  const bytes = fetched?.ok ? await fetched.arrayBuffer().catch(() => null) : null
  if (fetched === null || bytes === null) throw new Unkept('not_fetched', path)
  if ((await digest(bytes)) !== sha256) throw new Unkept('other_content', path)
  const headers = new Headers(fetched.headers)
  headers.delete('Content-Encoding')
  headers.delete('Content-Length')
  await put(cache, url, new Response(bytes, { headers }), path)
}

async function put(cache: Cache, url: string, response: Response, path: string): Promise<void> {
  try {
    await cache.put(url, response)
  } catch {
    throw new Unkept('full', path)
  }
}

/** First what is kept of the version in use, then of any other, for a page that was opened before; then the network. */
async function serve(request: Request, url: URL): Promise<Response> {
  const { scope } = worker.registration
  const isPage = request.mode === 'navigate' && url.href.split(/[?#]/)[0] === scope
  const wanted = isPage ? addressOf('index.html') : url.href.replace(/[?#].*$/s, '')
  const chosen = await chosenName()
  const kept =
    (chosen === null ? undefined : await (await caches.open(chosen)).match(wanted)) ?? (await caches.match(wanted))
  return kept ?? fetch(request)
}

function addressOf(path: string): string {
  return new URL(path, worker.registration.scope).href
}

async function digest(bytes: ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return [...hash].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

async function tell(told: OfflineTold): Promise<void> {
  for (const client of await worker.clients.matchAll({ includeUncontrolled: true, type: 'window' })) {
    if (client.url.startsWith(worker.registration.scope)) client.postMessage(told)
  }
}
