import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { microphoneArgs, noiseWav, recordedClips, startListening } from './recording'
import { openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

let folder: string
let yard: Yard
let opened: YardPage
let page: Page
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-full-'))
  writeFileSync(join(folder, 'mic.wav'), noiseWav(44_100, 7, 31))
  yard = await openYard(microphoneArgs(join(folder, 'mic.wav')))
  opened = await yard.open('phone')
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
    const length = page.getByLabel('Another length')
    await length.fill('60')
    await length.press('Tab')
    await leaveRoom(page, 400e3)
    // The browser goes by the room it once saw for as long as a page holds its database open.
    await page.reload()
    await leaveRoom(page, 400e3)
    await page.getByRole('button', { name: /^Record point/ }).click()
    await page.getByText('This device has no room left.').waitFor()
    await page.getByText(/^A clip was cut off/).waitFor()
    expect((await recordedClips(page)).map(({ row }) => [row.point, row.air, row.take])).toEqual([[1, 'on', 1]])
  })

  it('makes a clip of it once there is room again', async () => {
    await leaveRoom(page, null)
    await page.getByRole('button', { name: 'Keep it as a clip' }).click()
    await page.getByText(/is in the job\.$/).waitFor()
    const clips = await recordedClips(page)
    expect(clips.length).toBe(2)
    expect(clips[1]!.clip.channels[0]!.length).toBeGreaterThan(0.2 * 44_100)
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

  it('hand over in the middle of a clip, and what was recorded until then is there to be kept', async () => {
    await page.bringToFront()
    await page.getByRole('button', { name: /^Record point/ }).click()
    await page.getByText(/^Recording: 5[0-8] seconds to go/).waitFor()
    await second.getByRole('button', { name: 'Work here instead' }).click()
    await page.getByText('The jobs are open in another tab').waitFor()
    await second.getByRole('button', { name: 'Keep it as a clip' }).click()
    await second.getByText(/is in the job\.$/).waitFor()
    const clips = await recordedClips(second)
    expect(clips.length).toBe(3)
    expect(clips[2]!.clip.channels[0]!.length).toBeGreaterThan(44_100)
    expect(await page.getByRole('button', { name: /^Record point/ }).isDisabled()).toBe(true)
  })
})

/** Lets the browser have this much more room for the page than it uses now; `null` for as much as there is. */
async function leaveRoom(page: Page, bytes: number | null): Promise<void> {
  const origin = new URL(page.url()).origin
  const browser = await page.context().newCDPSession(page)
  const { usage } = await browser.send('Storage.getUsageAndQuota', { origin })
  const quota = bytes === null ? {} : { quotaSize: Math.round(usage + bytes) }
  await browser.send('Storage.overrideQuotaForOrigin', { origin, ...quota })
  if (bytes === null) await browser.detach()
}
