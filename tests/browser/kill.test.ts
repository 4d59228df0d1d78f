import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { type Browser, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { readWav } from '../../shared/audio/readWav'
import { staticServer } from '../../src/app/serve/staticServer.mjs'
import { chromiumPath } from '../support/chromiumPath.mjs'
import { expectFromFile, microphoneArgs, noiseWav, recordedClips, startListening } from './recording'
import { BROWSER_ARGS, PATIENT_MS, root } from './yardPage'

const RATE_HZ = 44_100

let folder: string
let file: Float32Array
let server: Awaited<ReturnType<typeof staticServer>>
let running: Running | null = null
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-kill-'))
  const wav = noiseWav(RATE_HZ, 7, 21)
  writeFileSync(join(folder, 'mic.wav'), wav)
  file = readWav(wav, 'mic.wav').channels[0]!
  server = await staticServer(resolve(root, 'dist/app'), { firstPort: 0, tries: 1 })
})
afterAll(async () => {
  if (running !== null) kill(running)
  await server.close()
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
})

it('a browser that is killed while it records, five times, has lost at most half a second each time, and nothing before', async () => {
  const lostS: number[] = []
  running = await start()
  await startListening(running.page, 5, 30)
  for (let round = 1; round <= 5; round++) {
    const { page } = running
    await page.getByRole('button', { name: /^Record point/ }).click()
    // Not the same moment of a chunk each time.
    await page.waitForFunction((ms) => recordedForMs() > ms, 1500 + 170 * round)
    const recordedMs = await page.evaluate(() => recordedForMs())
    kill(running)

    running = await start()
    const again = running.page
    await again.getByRole('button', { name: 'Keep it as a clip' }).click()
    await again.getByText(/^The clip of point \d is in the job\.$/).waitFor()
    const clips = await recordedClips(again)
    expect(clips.length).toBe(round)
    for (const { clip, recording } of clips) {
      expect(recording.ended_by).toBe('killed')
      expectFromFile(clip.channels[0]!, file, RATE_HZ)
    }
    lostS.push(recordedMs / 1000 - clips.at(-1)!.clip.channels[0]!.length / RATE_HZ)
    expect(await again.getByRole('button', { name: 'Keep it as a clip' }).count()).toBe(0)
  }
  console.log(`lost: ${lostS.map((seconds) => `${seconds.toFixed(2)} s`).join(', ')}`)
  expect(lostS.filter((seconds) => seconds > 0.5)).toEqual([])
}, 600_000)

/** In the page: for how long the audio thread has recorded, told from its own reports. */
declare function recordedForMs(): number

interface Running {
  readonly process: ChildProcess
  readonly browser: Browser
  readonly page: Page
}

/** A browser as a person has it: with a profile that stays, in a process group of its own. */
async function start(): Promise<Running> {
  const args = [
    ...BROWSER_ARGS,
    ...microphoneArgs(join(folder, 'mic.wav')),
    '--headless=new',
    '--remote-debugging-port=0',
    `--user-data-dir=${join(folder, 'profile')}`,
    'about:blank',
  ]
  const child = spawn(chromiumPath()!, args, { detached: true, stdio: ['ignore', 'ignore', 'pipe'] })
  const browser = await chromium.connectOverCDP(await addressOf(child))
  const context = browser.contexts()[0]!
  await context.addInitScript(() => {
    let startedMs = Number.POSITIVE_INFINITY
    Object.assign(window, { recordedForMs: () => performance.now() - startedMs })
    const Node = window.AudioWorkletNode
    window.AudioWorkletNode = class extends Node {
      constructor(...given: ConstructorParameters<typeof Node>) {
        super(...given)
        this.port.addEventListener('message', ({ data }) => {
          if (data.kind !== 'recorded') return
          startedMs = Math.min(startedMs, performance.now() - (1000 * data.frames) / this.context.sampleRate)
        })
      }
    }
  })
  const page = context.pages()[0] ?? (await context.newPage())
  page.setDefaultTimeout(PATIENT_MS)
  await page.goto(lastUrl ?? server.url)
  return { process: child, browser, page }
}

let lastUrl: string | null = null

/** The whole process group at once, as when a phone ends an app or its battery is pulled. */
function kill({ process: child, page }: Running): void {
  lastUrl = page.url()
  running = null
  process.kill(-child.pid!, 'SIGKILL')
}

function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = ''
    child.stderr!.on('data', (data: Buffer) => {
      said += data.toString()
      const found = /DevTools listening on (ws:\S+)/.exec(said)
      if (found) resolve(found[1]!)
    })
    child.on('exit', () => reject(new Error(`the browser ended: ${said}`)))
  })
}
