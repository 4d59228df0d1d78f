import { createHash } from 'node:crypto'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { Clip } from '../../shared/audio/clip'
import { readWav } from '../../shared/audio/readWav'
import { writeWav } from '../../shared/audio/writeWav'
import { Random } from '../../shared/base/random'
import { goToScreen } from './yardPage'

/** Arguments for the browser: this file stands for the microphone, over and over, and nobody is asked for leave. */
export function microphoneArgs(path: string): string[] {
  return [
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-audio-capture=${path}`,
  ]
}

/** Noise as 16-bit WAV that is nowhere like itself, so that any piece of it tells where it was. */
export function noiseWav(sampleRateHz: number, durationS: number, seed: number): Buffer {
  const random = new Random(seed)
  const samples = Float32Array.from({ length: sampleRateHz * durationS }, () => random.uniform() - 0.5)
  const clip: Clip = { channels: [samples], sampleRateHz, encoding: { kind: 'pcm', bits: 16 }, problems: [] }
  return Buffer.from(writeWav(clip))
}

/** Begins a job, goes to the screen Listen past hooking up, and adds these points a metre apart, with clips of this length. */
export async function startListening(page: Page, points: number, seconds: number): Promise<void> {
  await page.getByRole('button', { name: 'New job', exact: true }).click()
  await goToScreen(page, 'Listen')
  await page.getByRole('button', { name: 'On to the points' }).click()
  for (let point = 1; point <= points; point++) {
    await page.getByLabel('Along the line').fill(String(point - 1))
    await page.getByRole('button', { name: 'Add a point' }).click()
    await page.getByRole('button', { name: `Point ${point}: not recorded` }).waitFor()
    if (point === 1) await page.getByText('Listen at another place').click()
  }
  const length = page.getByLabel('Another length')
  await length.fill(String(seconds))
  await length.press('Tab')
  await page.getByRole('button', { name: 'Point 1: not recorded' }).click()
}

/** A kept clip as bytes, out of the browser's storage: by point, air and take of the open job's recorded clips. */
export interface KeptClip {
  readonly row: { readonly point: number; readonly air: string; readonly take: number; readonly time_s: number }
  readonly recording: Record<string, unknown>
  readonly problems: readonly { readonly key: string }[]
  readonly clip: Clip
}

interface StoredClip {
  readonly point: number
  readonly air: string
  readonly take: number
  readonly time_s: number
  readonly sha256: string
  readonly problems: readonly { readonly key: string }[]
  readonly recording?: Record<string, unknown>
}

/** Every clip that was recorded here, of all kept jobs, in order of time; their digests are checked. */
export async function recordedClips(page: Page): Promise<KeptClip[]> {
  const stored = await page.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
    const database = await done(indexedDB.open('yardhark'))
    const jobs = (await done(database.transaction('jobs').objectStore('jobs').getAll())) as {
      json: { lines: { sweeps: { clips: StoredClip[] }[] }[] }
    }[]
    const clips = jobs
      .flatMap(({ json }) => json.lines.flatMap(({ sweeps }) => sweeps.flatMap((sweep) => sweep.clips)))
      .filter(({ recording }) => recording !== undefined)
    const read = async (sha256: string) => {
      const sound = await done(database.transaction('sounds').objectStore('sounds').get(sha256))
      const bytes = new Uint8Array(await (sound.bytes as Blob).arrayBuffer())
      let text = ''
      for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192))
      return btoa(text)
    }
    const all = await Promise.all(clips.map(async (clip) => ({ clip, base64: await read(clip.sha256) })))
    database.close()
    return all
  })
  return stored
    .map(({ clip, base64 }) => {
      const bytes = Buffer.from(base64, 'base64')
      if (createHash('sha256').update(bytes).digest('hex') !== clip.sha256)
        throw new Error(`${clip.sha256} holds other bytes`)
      const { recording = {}, problems, ...row } = clip
      return { row, recording, problems, clip: readWav(new Uint8Array(bytes), '') }
    })
    .sort((a, b) => a.row.time_s - b.row.time_s)
}

/** Where a piece of a recording lies in the file that stands for the microphone, and by how much it differs there. */
export interface Comparison {
  readonly atFrame: number
  /** Largest difference of any sample, full scale 1. */
  readonly largest: number
  readonly frames: number
}

/** Samples that tell a place in noise, and how near they must come: a few steps of 16 bits. */
const PROBE_FRAMES = 64
const NEAR = 3 / 32_768

/**
 * A browser that is busy leaves something of its pretended microphone out before it reaches the page, now and then, and hands
 * over a few blocks of nothing instead: so often and so long at most, s.
 */
const MOST_SEAMS = 4
const MOST_EMPTY_S = 0.05
/** Length of the pieces that the page keeps, s: what is missing by just so much, we lost. */
const CHUNK_S = 0.25

/**
 * Asks that a recording is the file's, sample by sample within a step of 16 bits and in the file's order, but for what a busy
 * browser left out: a fifth of a piece of ours at most, and no gap of a whole number of our pieces.
 *
 * @returns Largest difference of any sample, full scale 1.
 */
export function expectFromFile(recorded: Float32Array, file: Float32Array, rateHz: number): number {
  const stretches = equalStretches(recorded, file)
  const covered = stretches.reduce((sum, { frames }) => sum + frames, 0)
  expect(recorded.length - covered).toBeLessThanOrEqual(MOST_EMPTY_S * rateHz)
  expect(stretches.length - 1).toBeLessThanOrEqual(MOST_SEAMS)
  const leftOut = stretches.slice(1).map(({ atFrame }, i) => {
    const before = stretches[i]!
    return (((atFrame - before.atFrame - before.frames) % file.length) + file.length) % file.length
  })
  expect(leftOut.filter((frames) => frames % Math.round(CHUNK_S * rateHz) === 0)).toEqual([])
  return Math.max(...stretches.map(({ largest }) => largest))
}

/** The stretches of a recording that are in the file, each as long as it is equal within a step of 16 bits. */
export function equalStretches(recorded: Float32Array, file: Float32Array): Comparison[] {
  const stretches: Comparison[] = []
  for (let from = 0; from + PROBE_FRAMES <= recorded.length; ) {
    const atFrame = placeIn(file, recorded.subarray(from, from + PROBE_FRAMES))
    if (atFrame === null) {
      from += PROBE_FRAMES
      continue
    }
    let frames = 0
    let largest = 0
    for (; from + frames < recorded.length; frames++) {
      const difference = Math.abs(recorded[from + frames]! - file[(atFrame + frames) % file.length]!)
      if (difference > 1 / 32_768) break
      largest = Math.max(largest, difference)
    }
    if (frames >= PROBE_FRAMES) stretches.push({ atFrame, largest, frames })
    from += Math.max(frames, PROBE_FRAMES)
  }
  return stretches
}

function placeIn(file: Float32Array, probe: Float32Array): number | null {
  for (let at = 0; at < file.length; at++) {
    if (probe.every((sample, i) => Math.abs(sample - file[(at + i) % file.length]!) <= NEAR)) return at
  }
  return null
}
