import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { CDPSession, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readWav } from '../../shared/audio/readWav'
import { expectFromFile, microphoneArgs, noiseWav, recordedClips, startListening } from './recording'
import { openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

/** Room for the page at first, bytes: a clip of two seconds, and not a clip of a minute, which takes ten times as much. */
const ROOM_BYTES = 3e6
/** A clip of a minute, and how long it is waited for, ms. */
const LONG_MS = 2 * PATIENT_MS

let folder: string
let file: Float32Array
let yard: Yard
let opened: YardPage
let page: Page
let quota: CDPSession
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-full-'))
  const wav = noiseWav(44_100, 7, 31)
  writeFileSync(join(folder, 'mic.wav'), wav)
  file = readWav(wav, 'mic.wav').channels[0]!
  yard = await openYard(microphoneArgs(join(folder, 'mic.wav')))
  // The browser goes by the room that it once saw for half a minute: it has to see little from the first moment on.
  opened = await yard.open('phone', {}, async (context) => {
    quota = await context.newCDPSession(await context.newPage())
    await giveRoom(ROOM_BYTES)
  })
  page = opened.page
  page.setDefaultTimeout(PATIENT_MS)
  await startListening(page, 2, 2)
  await page.getByRole('button', { name: 'Record point 1, air on' }).click()
  await page.getByRole('button', { name: 'Record point 1, air off' }).waitFor()
})
afterAll(async () => {
  await yard.close()
  rmSync(folder, { recursive: true })
})

describe('a device without room', () => {
  it('is told of before it hurts', async () => {
    // This browser tells every page the same room; others tell what there is.
    await page.evaluate(() => {
      navigator.storage.estimate = () => Promise.resolve({ usage: 1e6, quota: 6e6 })
    })
    await page.getByRole('button', { name: 'Close the microphone' }).click()
    await page.getByRole('button', { name: 'Open the microphone' }).click()
    await page.getByText(/^Room is left for about \d+ clips/).waitFor()
  })

  it('keeps every clip before, says that it is full, and holds on to as much of the last one as came', async () => {
    await setLength(60)
    await page.getByRole('button', { name: /^Record point/ }).click()
    await page.getByText('This device has no room left.').waitFor({ timeout: LONG_MS })
    await page.getByText(/^A clip was cut off/).waitFor()
    expect((await recordedClips(page)).map(({ row }) => [row.point, row.air, row.take])).toEqual([[1, 'on', 1]])
  })

  it('makes a clip of it once there is room again, with every sample that was kept', async () => {
    await giveRoom(1e9)
    await page.getByRole('button', { name: 'Keep it as a clip' }).click()
    await page.getByText(/is in the job\.$/).waitFor()
    const clips = await recordedClips(page)
    expect(clips.length).toBe(2)
    const [samples] = clips[1]!.clip.channels
    expect(samples!.length).toBeGreaterThan(44_100)
    expectFromFile(samples!, file, 44_100)
  })
})

describe('two tabs', () => {
  let second: Page
  beforeAll(async () => {
    second = await opened.context.newPage()
    second.setDefaultTimeout(PATIENT_MS)
    await second.goto(page.url())
  })

  it('do not write over each other: the second only looks, and says so', async () => {
    await second.getByText('The jobs are open in another tab').waitFor()
    expect(await second.getByRole('button', { name: /^Record point/ }).isDisabled()).toBe(true)
  })

  it('hand over only after saving: a clip under way is ended, and all of it is in the job', async () => {
    await page.bringToFront()
    await page.getByRole('button', { name: /^Record point/ }).click()
    await page.getByText(/^Recording: 5[0-8] seconds to go/).waitFor()
    await workHere(second, page)
    const clips = await recordedClips(second)
    expect(clips.length).toBe(3)
    expect(clips[2]!.recording.ended_by).toBe('stopped')
    expect(clips[2]!.clip.channels[0]!.length).toBeGreaterThan(44_100)
    expect(await page.getByRole('button', { name: /^Record point/ }).isDisabled()).toBe(true)
    expect(clips[2]!.problems.map(({ key }) => key)).toContain('ended_stopped')
    expect(await second.getByRole('button', { name: 'Keep it as a clip' }).count()).toBe(0)
  })

  it('hand over what was changed a moment before', async () => {
    await second.getByText('Listen at another place').click()
    await second.getByLabel('Along the line').fill('5')
    await second.getByRole('button', { name: 'Add a point' }).click()
    await workHere(page, second)
    await page.getByRole('button', { name: 'Point 3: not recorded' }).waitFor()
    expect(await recordedClips(page)).toHaveLength(3)
  })
})

async function setLength(seconds: number): Promise<void> {
  const length = page.getByLabel('Another length')
  await length.fill(String(seconds))
  await length.press('Tab')
}

/** Goes on in this tab. */
async function workHere(here: Page, there: Page): Promise<void> {
  await here.getByRole('button', { name: 'Work here instead' }).click()
  await there.getByText('The jobs are open in another tab').waitFor()
  await here.getByText('The jobs are open in another tab').waitFor({ state: 'detached' })
}

/** Lets the browser have this much room for the page in all. */
async function giveRoom(bytes: number): Promise<void> {
  await quota.send('Storage.overrideQuotaForOrigin', { origin: new URL(yard.url).origin, quotaSize: bytes })
}
