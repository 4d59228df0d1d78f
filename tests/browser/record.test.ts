import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readWav } from '../../shared/audio/readWav'
import { EAR_CEILING } from '../../shared/listen/limiter'
import { type SoundServer, soundServer } from '../support/soundServer'
import { listenIn } from './ears'
import { equalStretches, expectFromFile, microphoneArgs, noiseWav, recordedClips, startListening } from './recording'
import { axeFindings, openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

describe('recording on a phone whose microphone is a file at 44.1 kHz', () => {
  let folder: string
  let file: Float32Array
  let yard: Yard
  let opened: YardPage
  let page: Page
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'yardhark-record-'))
    const wav = noiseWav(44_100, 7, 11)
    writeFileSync(join(folder, 'mic.wav'), wav)
    file = readWav(wav, 'mic.wav').channels[0]!
    yard = await openYard(microphoneArgs(join(folder, 'mic.wav')))
    opened = await yard.open('phone', {}, async (context) => {
      await listenIn(context)
      await noteTracks(context)
    })
    page = opened.page
    page.setDefaultTimeout(PATIENT_MS)
    await startListening(page, 2, 2)
  })
  afterAll(async () => {
    await opened.close()
    await yard.close()
    rmSync(folder, { recursive: true })
  })

  it('keeps a clip of the chosen length whose samples are those of the file, in 16 bits', async () => {
    await page.getByRole('button', { name: 'Record point 1, air on' }).click()
    await page.getByRole('button', { name: 'Record point 1, air off' }).waitFor()
    const [kept] = await recordedClips(page)
    expect(kept!.row).toMatchObject({ point: 1, air: 'on', take: 1 })
    const { channels, sampleRateHz, encoding } = kept!.clip
    expect({ count: channels.length, frames: channels[0]!.length, sampleRateHz, encoding }).toEqual({
      count: 1,
      frames: 88_200,
      sampleRateHz: 44_100,
      encoding: { kind: 'pcm', bits: 16 },
    })
    const largest = expectFromFile(channels[0]!, file, 44_100)
    console.log(`44.1 kHz: the largest difference is ${largest * 32_768} steps of 16 bits`)
  })

  it('reads back what was asked of the phone, and finds nothing to say against it', async () => {
    const [kept] = await recordedClips(page)
    // Names as in W3C Media Capture and Streams. [MediaCapture]
    expect(kept!.recording).toMatchObject({
      device: expect.stringMatching(/./),
      sample_rate_hz: 44_100,
      kept_bits: 16,
      wanted_s: 2,
      ended_by: null,
      settings: {
        echo_cancellation: false,
        noise_suppression: false,
        auto_gain_control: false,
        sample_rate_hz: 44_100,
      },
    })
    expect(kept!.problems).toEqual([])
  })

  it('goes on with the air off in the same setting-down, then with the next point', async () => {
    expect(await page.getByText('Leave the microphone where it is, and turn the air off.').isVisible()).toBe(true)
    await page.getByRole('button', { name: 'Record point 1, air off' }).click()
    await page.getByRole('button', { name: 'Record point 2, air on' }).waitFor()
    const clips = await recordedClips(page)
    expect(clips.map(({ row }) => [row.point, row.air, row.take])).toEqual([
      [1, 'on', 1],
      [1, 'off', 1],
    ])
  })

  it('says what is wrong with a clip, and takes another with one tap', async () => {
    // Noise without a pause has no bursts.
    await page.getByText('Under two bursts were caught').or(page.getByText('is only 2.0')).first().waitFor()
    await page.getByRole('button', { name: 'Record it again' }).click()
    await page.getByRole('button', { name: 'End the clip here' }).click()
    await page.getByText('The clip was ended by hand.').waitFor()
    const clips = await recordedClips(page)
    expect(clips.at(-1)).toMatchObject({ row: { point: 1, air: 'on', take: 2 }, recording: { ended_by: 'stopped' } })
  })

  it('takes a clip out of its sweep and puts it back, also after a reload', async () => {
    await page.getByRole('button', { name: 'Take the clip out' }).first().click()
    expect((await pollClips(page, 2)).map(({ row }) => row.take)).toEqual([1, 1])
    await page.reload()
    await page.getByText('Taken out: 1').click()
    await page.getByRole('button', { name: 'Put back' }).click()
    expect((await pollClips(page, 3)).map(({ row }) => row.take)).toEqual([1, 1, 2])
  })

  it('has nothing that an accessibility checker finds, light or dark, with the microphone open', async () => {
    await page.getByRole('button', { name: 'Open the microphone' }).click()
    await page.getByText(/^(?:Ready: the level has settled|Not settled yet)$/).waitFor()
    expect(await axeFindings(page)).toEqual([])
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await axeFindings(page, { onlyContrast: true })).toEqual([])
    await page.emulateMedia({ colorScheme: 'light' })
  })

  it('lets the microphone be heard once that is asked for, never above the ceiling', async () => {
    expect(await earPeak(page)).toBeLessThan(1e-6)
    await page.getByRole('checkbox', { name: 'Hear the microphone in the headphones' }).check()
    await expect.poll(() => earPeak(page), { timeout: PATIENT_MS }).toBeGreaterThan(0.05)
    expect(await earPeak(page)).toBeLessThanOrEqual(EAR_CEILING)
  })

  it('keeps what it has when the page is left in the middle, and says so', async () => {
    await page.getByRole('button', { name: /^Record point/ }).click()
    await page.getByText(/^Recording: 1 seconds to go/).waitFor()
    await hide(page)
    await page.getByText('The page was left in the middle of the clip').waitFor()
    const last = (await recordedClips(page)).at(-1)!
    expect(last.recording.ended_by).toBe('hidden')
    expect(last.clip.channels[0]!.length).toBeGreaterThan(0.5 * 44_100)
  })

  it('keeps what it has when the microphone is unplugged in the middle, and says so', async () => {
    await page.getByRole('button', { name: /^Record point/ }).click()
    await page.getByText(/^Recording: 1 seconds to go/).waitFor()
    await page.evaluate(() =>
      (window as unknown as { tracks: MediaStreamTrack[] }).tracks.at(-1)!.dispatchEvent(new Event('ended')),
    )
    await page.getByText('The microphone is gone').waitFor()
    await expect.poll(async () => (await recordedClips(page)).at(-1)!.recording.ended_by).toBe('unplugged')
    expect((await recordedClips(page)).at(-1)!.clip.channels[0]!.length).toBeGreaterThan(0.5 * 44_100)
  })

  it('brings no error to the console and asks nobody else for anything', () => {
    expect(opened.troubles).toEqual([])
  })
})

it('a phone that does not give its microphone is told of in words, with a way to try again', async () => {
  const yard = await openYard()
  const { page } = await yard.open('phone', {}, async (context) => {
    await context.addInitScript(() => {
      if (!window.isSecureContext) return
      Object.assign(window, { fault: 'NotAllowedError' })
      navigator.mediaDevices.getUserMedia = () =>
        Promise.reject(new DOMException('no', (window as unknown as { fault: string }).fault))
    })
  })
  page.setDefaultTimeout(PATIENT_MS)
  await startListening(page, 1, 2)
  await page.getByRole('button', { name: 'Record point 1, air on' }).click()
  const alert = page.getByRole('alert')
  for (const [fault, message] of [
    ['NotAllowedError', /was not allowed to use the microphone.*Tap the sign before the address/],
    ['NotFoundError', /has no microphone.*Plug one in/],
    ['NotReadableError', /could not be opened.*other apps/],
  ] as const) {
    await page.evaluate((name) => Object.assign(window, { fault: name }), fault)
    await alert.getByRole('button', { name: 'Try again' }).click()
    await expect.poll(() => alert.textContent(), { timeout: PATIENT_MS }).toMatch(message)
  }
  await yard.close()
})

describe('recording at 48 kHz through the sound server of this system', () => {
  let server: SoundServer
  beforeAll(async () => {
    server = await soundServer()
  })
  afterAll(() => server.close())

  it('keeps the samples that were played into the microphone', async () => {
    const wav = noiseWav(48_000, 30, 12)
    const yard = await openYard(['--use-fake-ui-for-media-stream'], { env: server.env })
    const opened = await yard.open('phone')
    const { page } = opened
    page.setDefaultTimeout(PATIENT_MS)
    await startListening(page, 1, 2)
    server.play(wav)
    await page.getByRole('button', { name: 'Record point 1, air on' }).click()
    await page.getByRole('button', { name: 'Record point 1, air off' }).waitFor()
    const [kept] = await recordedClips(page)
    await yard.close()
    expect(kept!.clip.sampleRateHz).toBe(48_000)
    const stretches = equalStretches(kept!.clip.channels[0]!, readWav(wav, 'mic.wav').channels[0]!)
    const frames = stretches.map((stretch) => stretch.frames)
    console.log(
      `48 kHz: ${kept!.clip.encoding.bits} bits; equal for ${frames.join(' + ')} of ${kept!.clip.channels[0]!.length} frames, ` +
        `largest difference ${Math.max(...stretches.map(({ largest }) => largest)) * 32_768} steps`,
    )
    // A busy machine's sound server leaves something out now and then; what came through came through as it was.
    expect(Math.max(...frames)).toBeGreaterThan(0.3 * 48_000)
    expect(frames.reduce((sum, count) => sum + count, 0)).toBeGreaterThan(0.7 * kept!.clip.channels[0]!.length)
  })
})

/** Keeps every track that the page opens where a test can end it. */
async function noteTracks(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const tracks: MediaStreamTrack[] = []
    Object.assign(window, { tracks })
    if (!window.isSecureContext) return // the page before the first
    const open = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices)
    navigator.mediaDevices.getUserMedia = async (wanted) => {
      const stream = await open(wanted)
      tracks.push(...stream.getTracks())
      return stream
    }
  })
}

/** Recorded clips in storage once there are so many of them. */
async function pollClips(page: Page, count: number) {
  await expect.poll(async () => (await recordedClips(page)).length, { timeout: PATIENT_MS }).toBe(count)
  return recordedClips(page)
}

/** Largest sample that reaches the loudspeaker just now. */
async function earPeak(page: Page): Promise<number> {
  return page.evaluate(() => {
    const { ear } = window as unknown as { ear?: AnalyserNode }
    if (ear === undefined) return 0
    const samples = new Float32Array(ear.fftSize)
    ear.getFloatTimeDomainData(samples)
    return samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
  })
}

/** As when another app comes to the front, and back again. */
async function hide(page: Page): Promise<void> {
  await page.evaluate(() => {
    const state = (value: string) => Object.defineProperty(document, 'visibilityState', { configurable: true, value })
    state('hidden')
    document.dispatchEvent(new Event('visibilitychange'))
    state('visible')
    document.dispatchEvent(new Event('visibilitychange'))
  })
}
