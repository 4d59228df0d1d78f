import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { close } from '../support/close'
import { differencesOf } from './differencesOf'
import { microphoneArgs, recordedClips } from './recording'
import { savedFolder, toldByCommand } from './sweepFolder'
import { tapSheet } from './thumb'
import { goToScreen, openYard, PATIENT_MS, root, savedAnswer, type Yard, type YardPage } from './yardPage'

const POINTS = [1, 2, 3, 4, 5, 6, 7, 8]
/** What the microphone hears at our points: clips of the invented job from its point 4 on, 3 m farther along. */
const FIRST_OF_DEMO = 4
const FARTHER_M = 3
/** Where the demo's elbow is cracked: demo-audio/README.md. */
const TRUE_PLACE_M = 6.35 - FARTHER_M

let folder: string
let yard: Yard
let opened: YardPage
let page: Page
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-yard-'))
  hear(1, 'on')
  yard = await openYard(microphoneArgs(join(folder, 'mic.wav')))
  opened = await yard.open(
    'phone',
    { viewport: { width: 390, height: 844 }, serviceWorkers: 'allow' },
    async (context) => {
      await context.addInitScript(() => {
        const told = MediaStreamTrack.prototype.getSettings
        MediaStreamTrack.prototype.getSettings = function () {
          const stays = (window as unknown as { gainStays?: boolean }).gainStays === true
          return { ...told.call(this), ...(stays && { autoGainControl: true }) }
        }
      })
    },
  )
  page = opened.page
  page.setDefaultTimeout(PATIENT_MS)
})
afterAll(async () => {
  await yard.close()
  rmSync(folder, { recursive: true })
})

describe('the whole job in the yard, on a phone without a signal', () => {
  it('starts once it was loaded, though the host is gone', async () => {
    await page.getByText(/This page and all it needs are kept on this device/).waitFor()
    await yard.stopServing()
    await opened.context.setOffline(true)
    await page.reload()
    await page.getByRole('button', { name: 'New job', exact: true }).tap()
    await page.getByText('Tap where the line starts.').waitFor()
  })

  it('has three legs by taps, as long as they were typed, and points at a spacing', async () => {
    await tapSheet(page, 0.14, 0.78)
    for (const [leg, x, y, lengthM] of [
      [1, 0.58, 0.78, '3'],
      [2, 0.58, 0.4, '2'],
      [3, 0.85, 0.4, '2'],
    ] as const) {
      await tapSheet(page, x, y)
      const field = page.getByLabel(`How long leg ${leg} is`)
      await field.fill(lengthM)
      await field.press('Tab')
    }
    await page.getByRole('radio', { name: 'Points' }).check()
    await page.getByLabel('A point every').fill('1')
    await page.getByRole('button', { name: 'Lay points' }).tap()
    const pegs = page.locator('[data-handle^="peg-"]')
    expect(await pegs.count()).toBe(POINTS.length)
    expect((await pegs.last().getAttribute('aria-label'))!.replaceAll('\u00a0', ' ')).toMatch(/^Point 8, 7\.00 m along/)
  })

  it('records eight points, air on and off without lifting, one after the other', async () => {
    await goToScreen(page, 'Listen')
    await page.getByRole('button', { name: 'On to the points' }).tap()
    await page.getByRole('radio', { name: '6 seconds' }).check()
    await page.getByRole('button', { name: 'Point 1: not recorded' }).tap()
    for (const point of POINTS) {
      await record(point, 'on')
      await page.getByText('Leave the microphone where it is, and turn the air off.').waitFor()
      await record(point, 'off')
    }
    await page.getByText('8 of 8 points recorded').waitFor()
    const clips = await recordedClips(page)
    expect(clips.map(({ row }) => [row.point, row.air, row.take])).toEqual(
      POINTS.flatMap((point) => [
        [point, 'on', 1],
        [point, 'off', 1],
      ]),
    )
    for (const { clip } of clips) expect(clip.channels[0]!.length).toBe(6 * clip.sampleRateHz)
  }, 900_000)

  it('shows the place, as near as the clips of the invented job tell it', async () => {
    await goToScreen(page, 'Place')
    await page.getByRole('heading', { name: /^(?:Located|Unsure)$/ }).waitFor()
    const { sources, verdict } = await savedAnswer(page)
    const [source] = sources
    console.log(`${verdict} at ${source?.along_m} m, window ${source?.window_m.join(' to ')} m; true ${TRUE_PLACE_M} m`)
    expect(verdict).toBe('located')
    close(source!.along_m, TRUE_PLACE_M, { abs: 0.5, because: 'half a spacing, between the points beside the crack' })
  })

  it('takes a retake, which counts little where the phone left its gain control on', async () => {
    await goToScreen(page, 'Listen')
    await page.getByRole('button', { name: /^Point 4: recorded/ }).tap()
    await page.evaluate(() => Object.assign(window, { gainStays: true }))
    await record(4, 'on')
    const last = (await recordedClips(page)).at(-1)!
    expect(last.row).toMatchObject({ point: 4, air: 'on', take: 2 })
    expect(last.problems.map(({ key }) => key)).toContain('phone_gain_on')
  })

  it('is all there after a reload, and answers as before', async () => {
    await goToScreen(page, 'Place')
    await clipCount(17)
    const before = await savedAnswer(page)
    await page.getByText('Saved', { exact: true }).waitFor()
    await page.reload()
    await clipCount(17)
    expect(differencesOf(await savedAnswer(page), before, 1e-9)).toEqual([])
    expect(await recordedClips(page)).toHaveLength(17)
    await goToScreen(page, 'Line')
    await page.getByRole('radio', { name: 'Points' }).check()
    expect(await page.locator('[data-handle^="peg-"]').count()).toBe(POINTS.length)
    await goToScreen(page, 'Place')
  })

  it('answers as the command line does of the exported folder, to 1e-9', async () => {
    const walk = await savedFolder(page, 'Save the sweep folder as a zip', folder)
    const told = toldByCommand(walk)
    expect(told.clips).toHaveLength(17)
    expect(differencesOf(told, await savedAnswer(page), 1e-9)).toEqual([])
  })

  it('brings no fault', () => {
    expect(opened.troubles.filter((each) => !each.includes('net::ERR_INTERNET_DISCONNECTED'))).toEqual([])
  })
})

/** From now on the microphone hears what it would hear at this point. The browser reads the file when it opens it. */
function hear(point: number, air: 'on' | 'off'): void {
  const name = `${String(point + FIRST_OF_DEMO - 1).padStart(2, '0')}-${air}.wav`
  copyFileSync(resolve(root, 'demo-audio', name), join(folder, 'mic.wav'))
}

async function record(point: number, air: 'on' | 'off'): Promise<void> {
  const shut = page.getByRole('button', { name: 'Close the microphone' })
  if (await shut.isVisible()) await shut.tap()
  hear(point, air)
  const before = (await recordedClips(page)).length
  await page.getByRole('button', { name: `Record point ${point}, air ${air}` }).tap()
  await expect.poll(async () => (await recordedClips(page)).length, { timeout: PATIENT_MS }).toBe(before + 1)
  await page.getByRole('button', { name: /^Record point/ }).waitFor()
}

/** Waits until the answer on show is of so many clips. */
async function clipCount(count: number): Promise<void> {
  await page.getByRole('heading', { name: /^(?:Located|Unsure)$/ }).waitFor()
  await expect.poll(async () => (await savedAnswer(page)).clips.length, { timeout: PATIENT_MS }).toBe(count)
}
