import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { writeWav } from '../../shared/audio/writeWav'
import { Random } from '../../shared/base/random'
import { microphoneArgs, recordedClips, startListening } from './recording'
import { goToScreen, openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

const RATE_HZ = 44_100

/** What stands in the page for a phone's voice, its screen lock and its clock: nobody hears or sees those of a test. */
interface StandIn {
  said: string[]
  locks: number
  held: number
  setBackMs: number
}

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-hands-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

async function openWith(wav: Buffer, name: string): Promise<{ yard: Yard; opened: YardPage }> {
  writeFileSync(join(folder, name), wav)
  const yard = await openYard(microphoneArgs(join(folder, name)))
  const opened = await yard.open('phone', {}, async (context) => {
    await context.addInitScript(() => {
      const standIn: StandIn = { said: [], locks: 0, held: 0, setBackMs: 0 }
      Object.assign(window, { standIn })
      const now = Date.now.bind(Date)
      Date.now = () => now() - standIn.setBackMs
      Object.defineProperty(window, 'speechSynthesis', {
        value: { cancel: () => undefined, speak: ({ text }: SpeechSynthesisUtterance) => standIn.said.push(text) },
      })
      const request = async () => {
        standIn.locks++
        standIn.held++
        let released = false
        const release = async () => {
          if (!released) standIn.held--
          released = true
        }
        return {
          release,
          get released() {
            return released
          },
        }
      }
      Object.defineProperty(navigator, 'wakeLock', { value: { request } })
    })
  })
  opened.page.setDefaultTimeout(PATIENT_MS)
  return { yard, opened }
}

describe('hands free', () => {
  let yard: Yard
  let opened: YardPage
  const standIn = () => opened.page.evaluate(() => (window as unknown as { standIn: StandIn }).standIn)
  beforeAll(async () => {
    ;({ yard, opened } = await openWith(walkedWav(), 'walked.wav'))
    await startListening(opened.page, 2, 2)
  })
  afterAll(async () => {
    await opened.close()
    await yard.close()
  })

  it('records by itself once the sound has settled, and the screen stays awake', async () => {
    const { page } = opened
    await page.getByRole('checkbox', { name: /^Say the next point aloud/ }).click()
    await page.getByRole('checkbox', { name: /^Hands free/ }).click()
    await page.getByRole('button', { name: 'Record point 1, air off' }).waitFor()
    const [first] = await recordedClips(page)
    expect(first!.row).toMatchObject({ point: 1, air: 'on', take: 1 })
    const { locks, held } = await standIn()
    expect(locks).toBeGreaterThan(0)
    expect(held).toBe(1)
  })

  it('says each next clip aloud, goes on to the last, and keeps their order though the clock was set back an hour', async () => {
    const { page } = opened
    await page.evaluate(() => {
      ;(window as unknown as { standIn: StandIn }).standIn.setBackMs = 3_600_000
    })
    await page.getByText('2 of 2 points recorded').waitFor({ timeout: 3 * PATIENT_MS })
    const clips = await recordedClips(page)
    expect(clips.map(({ row }) => [row.point, row.air])).toEqual([
      [1, 'on'],
      [1, 'off'],
      [2, 'on'],
      [2, 'off'],
    ])
    const timesS = clips.map(({ row }) => row.time_s)
    expect(timesS.every((timeS, i) => i === 0 || timeS > timesS[i - 1]!)).toBe(true)
    expect(timesS.at(-1)! - timesS[0]!).toBeLessThan(1800)
    await page.getByText(/clock of this device was set back/i).waitFor()
    // The first point comes last once more, as a clip to compare with.
    expect((await standIn()).said).toEqual([
      'Leave it there. Air off.',
      'Next, point 2.',
      'Leave it there. Air off.',
      'Next, point 1.',
    ])
  })

  it('lets the screen sleep again when the screen Listen is left', async () => {
    await goToScreen(opened.page, 'Jobs')
    await opened.page.waitForFunction(() => (window as unknown as { standIn: StandIn }).standIn.held === 0)
    expect(opened.troubles).toEqual([])
  })
})

/** Even noise, and once in thirteen seconds the handling of a microphone that is taken up and set down. */
function walkedWav(): Buffer {
  const random = new Random(31)
  const durationS = 13
  const samples = Float32Array.from({ length: durationS * RATE_HZ }, (_, n) =>
    random.normal(0, n > (durationS - 0.5) * RATE_HZ ? 0.15 : 0.01),
  )
  return wavOf(samples)
}

function wavOf(samples: Float32Array): Buffer {
  const encoding = { kind: 'pcm', bits: 16 } as const
  return Buffer.from(writeWav({ channels: [samples], sampleRateHz: RATE_HZ, encoding, problems: [] }))
}

/** Soft noise with taps at these times, s, as high as told. */
function tapsWav(durationS: number, taps: readonly { readonly atS: number; readonly height: number }[]): Buffer {
  const random = new Random(41)
  const samples = Float32Array.from({ length: durationS * RATE_HZ }, () => random.normal(0, 0.001))
  for (const { atS, height } of taps) {
    const first = Math.round(atS * RATE_HZ)
    for (let n = 0; n < 1500; n++) {
      samples[first + n]! += height * Math.exp(-n / 300) * Math.sin((2 * Math.PI * 400 * n) / RATE_HZ)
    }
  }
  return wavOf(samples)
}

describe('the tap test', () => {
  const taps = (fromS: number, height: number) => [1.8, 3.2, 4.6].map((atS) => ({ atS: fromS + atS, height }))
  const verdictOf = async (wav: Buffer, name: string) => {
    const { yard, opened } = await openWith(wav, name)
    const { page } = opened
    await page.getByRole('button', { name: 'New job', exact: true }).click()
    await goToScreen(page, 'Listen')
    await page.getByRole('button', { name: 'Start the tap test' }).click()
    await page.getByText('Tap the ground microphone three times, slowly.').waitFor()
    const told = page.getByText(/^(?:The ground microphone is heard|The phone listens|No tap|It is not clear)/)
    await told.waitFor()
    const said = await told.textContent()
    await opened.close()
    await yard.close()
    return said
  }

  it('proves that the ground microphone is heard, where its taps are loud and those on the phone faint', async () => {
    const wav = tapsWav(20, [...taps(0, 0.7), ...taps(9, 0.03)])
    expect(await verdictOf(wav, 'ground.wav')).toMatch(/^The ground microphone is heard/)
  })

  it('says that the phone listens to its own, where it is the other way round, and what to do', async () => {
    const wav = tapsWav(20, [...taps(0, 0.03), ...taps(9, 0.7)])
    expect(await verdictOf(wav, 'phone.wav')).toMatch(/^The phone listens to its own microphone.*Push the plug in/)
  })
})
