import { createHash } from 'node:crypto'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { runInNewContext } from 'node:vm'
import { beforeAll, describe, expect, it } from 'vitest'
import type { OfflineTold } from '../../../../src/app/offline/messages'
import { builtFiles, serviceWorkerText } from '../../../../src/app/offline/offlineCopy.config'

const SCOPE = 'https://host.example/some/path/'
const OLD = { 'index.html': 'old page', 'assets/same.js': 'same', 'demo/6.wav': 'sound' }
const NEW = { 'index.html': 'new page', 'assets/same.js': 'same', 'demo/6.wav': 'sound' }

type Site = Readonly<Record<string, string>>

let oldScript: string
let newScript: string
beforeAll(async () => {
  oldScript = await scriptOf(OLD)
  newScript = await scriptOf(NEW)
})

describe('the list of files', () => {
  it('has the page first and the demo last, without the service worker, and another version for any change', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'yardhark-built-'))
    try {
      for (const [path, text] of Object.entries({ ...OLD, 'sw.js': 'none of it', 'assets/a b.css': 'x' })) {
        mkdirSync(join(folder, path, '..'), { recursive: true })
        writeFileSync(join(folder, path), text)
      }
      const files = builtFiles(folder)
      expect(files.map(({ path }) => path)).toEqual(['index.html', 'assets/a b.css', 'assets/same.js', 'demo/6.wav'])
      expect(files[0]!.sha256).toBe(digest('old page'))
    } finally {
      rmSync(folder, { recursive: true })
    }
    expect(await scriptOf(OLD)).toBe(oldScript)
    expect(versionOf(newScript)).not.toBe(versionOf(oldScript))
  })
})

describe('the service worker', () => {
  it('keeps every file at the first visit, and then serves all of them without a network', async () => {
    const device = new Device()
    device.site = OLD
    await device.visit(oldScript)
    expect(device.told.at(-1)).toEqual({ kind: 'kept', newer: false })
    device.site = null
    expect(await device.read('')).toBe('old page')
    expect(await device.read('#/jobs')).toBe('old page')
    expect(await device.read('assets/same.js?x=1')).toBe('same')
    expect(await device.read('demo/6.wav')).toBe('sound')
  })

  it('goes on where it stopped after the connection was lost in the middle', async () => {
    const device = new Device()
    device.site = { 'index.html': 'old page', 'assets/same.js': 'same' }
    await expect(device.visit(oldScript)).rejects.toThrow('demo/6.wav')
    expect(device.told.at(-1)).toEqual({ kind: 'failed', newer: false, why: 'not_fetched', file: 'demo/6.wav' })
    device.site = OLD
    device.fetched.length = 0
    await device.visit(oldScript)
    expect(device.fetched).toEqual(['demo/6.wav'])
    expect(device.told.at(-1)).toEqual({ kind: 'kept', newer: false })
  })

  it('takes no sign-in page of a network for a file', async () => {
    const device = new Device()
    device.site = { ...OLD, 'assets/same.js': '<html>Please sign in' }
    await expect(device.visit(oldScript)).rejects.toThrow('assets/same.js')
    expect(device.told.at(-1)).toEqual({ kind: 'failed', newer: false, why: 'other_content', file: 'assets/same.js' })
  })

  it('says so when the device has no room', async () => {
    const device = new Device()
    device.site = OLD
    device.isFull = true
    await expect(device.visit(oldScript)).rejects.toThrow('full')
    expect(device.told.at(-1)).toMatchObject({ kind: 'failed', why: 'full' })
  })

  it('fetches of a newer version what changed only, and serves the one in use until the newer one is taken', async () => {
    const device = new Device()
    device.site = OLD
    await device.visit(oldScript)
    device.site = NEW
    device.fetched.length = 0
    await device.visit(newScript)
    expect(device.fetched).toEqual(['index.html'])
    expect(device.told.at(-1)).toEqual({ kind: 'kept', newer: true })
    expect(await device.read('')).toBe('old page')
    await device.ask('check')
    expect(device.told.at(-1)).toEqual({ kind: 'kept', newer: true })
    await device.ask('take')
    expect(device.told.at(-1)).toEqual({ kind: 'taken' })
    expect(await device.read('')).toBe('new page')
  })

  it('goes on with the version in use when a newer one could not be fetched, and says it is of the newer one', async () => {
    const device = new Device()
    device.site = OLD
    await device.visit(oldScript)
    device.site = null
    await expect(device.visit(newScript)).rejects.toThrow('index.html')
    expect(device.told.at(-1)).toMatchObject({ kind: 'failed', newer: true })
    await device.start(oldScript)
    expect(await device.read('')).toBe('old page')
  })

  it('leaves the copies of other folders of the host alone, and clears away its own that nobody uses', async () => {
    const device = new Device()
    device.kept.set('yardhark https://host.example/other/ 1', new Map())
    device.kept.set(`yardhark ${SCOPE} broken-off`, new Map())
    device.site = OLD
    await device.visit(oldScript)
    expect([...device.kept.keys()].sort()).toEqual([
      'yardhark https://host.example/other/ 1',
      `yardhark ${SCOPE} ${versionOf(oldScript)}`,
      `yardhark ${SCOPE} choice`,
    ])
  })

  it('fetches anew what the browser threw away of its copy', async () => {
    const device = new Device()
    device.site = OLD
    await device.visit(oldScript)
    device.kept.get(`yardhark ${SCOPE} ${versionOf(oldScript)}`)!.delete(`${SCOPE}demo/6.wav`)
    device.fetched.length = 0
    await device.ask('check')
    expect(device.fetched).toEqual(['demo/6.wav'])
    expect(device.told.at(-1)).toEqual({ kind: 'kept', newer: false })
  })
})

const digest = (text: string) => createHash('sha256').update(text).digest('hex')
const versionOf = (script: string) => /OFFLINE_VERSION = '(\w+)'/.exec(script)![1]!
const scriptOf = (site: Site) =>
  serviceWorkerText(Object.entries(site).map(([path, text]) => ({ path, sha256: digest(text) })))

/** A browser's part of it: caches that stay, one worker at a time, and a site that may be out of reach. */
class Device {
  /** `null`: no network. */
  site: Site | null = null
  isFull = false
  readonly kept = new Map<string, Map<string, Response>>()
  readonly told: OfflineTold[] = []
  readonly fetched: string[] = []
  private listeners: Record<string, (event: object) => void> = {}

  /** The browser starts the script, without installing it. */
  async start(script: string): Promise<void> {
    this.listeners = {}
    const self = {
      addEventListener: (name: string, listener: (event: object) => void) => {
        this.listeners[name] = listener
      },
      registration: { scope: SCOPE },
      clients: {
        claim: async () => undefined,
        matchAll: async () => [{ url: SCOPE, postMessage: (told: OfflineTold) => this.told.push({ ...told }) }],
      },
      skipWaiting: async () => undefined,
    }
    const fetch = (url: string) => this.fetch(url)
    runInNewContext(script, { self, caches: this.caches(), fetch, crypto, URL, Headers, Response, Uint8Array })
  }

  async visit(script: string): Promise<void> {
    await this.start(script)
    await this.fire('install')
    await this.fire('activate')
  }

  async ask(data: string): Promise<void> {
    await this.fire('message', { data })
  }

  async read(path: string): Promise<string> {
    const [bare] = path.split('#')
    let answer: Promise<Response> | null = null
    const request = { url: `${SCOPE}${path}`, method: 'GET', mode: bare === '' ? 'navigate' : 'cors' }
    this.listeners.fetch!({
      request,
      respondWith: (response: Promise<Response>) => {
        answer = response
      },
    })
    return (await answer!).clone().text()
  }

  private async fire(name: string, more: object = {}): Promise<void> {
    const waits: Promise<void>[] = []
    this.listeners[name]!({ ...more, waitUntil: (wait: Promise<void>) => waits.push(wait) })
    await Promise.all(waits)
  }

  private async fetch(url: string): Promise<Response> {
    const path = url.slice(SCOPE.length)
    if (this.site === null) throw new TypeError('Failed to fetch')
    this.fetched.push(path)
    const text = this.site[path]
    return text === undefined ? new Response('nothing here', { status: 404 }) : new Response(text)
  }

  private caches() {
    const cacheOf = (name: string) => {
      const entries = this.kept.get(name) ?? new Map<string, Response>()
      this.kept.set(name, entries)
      return {
        keys: async () => [...entries.keys()].map((url) => ({ url })),
        match: async (url: string) => entries.get(url)?.clone(),
        put: async (url: string, response: Response) => {
          if (this.isFull) throw new DOMException('no room', 'QuotaExceededError')
          entries.set(url, response)
        },
      }
    }
    return {
      open: async (name: string) => cacheOf(name),
      has: async (name: string) => this.kept.has(name),
      keys: async () => [...this.kept.keys()],
      delete: async (name: string) => this.kept.delete(name),
      match: async (url: string) =>
        [...this.kept.values()]
          .find((entries) => entries.has(url))
          ?.get(url)
          ?.clone(),
    }
  }
}
