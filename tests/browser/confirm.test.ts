import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { EAR_CEILING } from '../../shared/listen/limiter'
import { heardNow, listenIn } from './ears'
import {
  axeFindings,
  openDemo,
  openYard,
  PATIENT_MS,
  type ScreenSize,
  savedAnswer,
  type Yard,
  type YardPage,
} from './yardPage'

let yard: Yard
beforeAll(async () => {
  yard = await openYard()
})
afterAll(() => yard.close())

/** On a busy machine sound comes, and goes, late. */
const LATE = { timeout: PATIENT_MS }

const NOTE = 'Gurgle in bursts <b>under the third paver</b>, quiet at 8.'

describe.each(['phone', 'desk'] as const)('confirming by ear on a %s', (size: ScreenSize) => {
  let opened: YardPage
  let page: Page
  let panel: Locator
  let confirm: Locator
  beforeAll(async () => {
    opened = await yard.open(size, {}, listenIn)
    page = opened.page
    page.setDefaultTimeout(PATIENT_MS)
    await openDemo(page)
    panel = page.getByRole('region', { name: /^Point \d+$/ })
    confirm = page.getByRole('region', { name: 'Heard by a person' })
  })
  afterAll(() => opened.close())

  it('is not possible before anything was looked at and heard', async () => {
    expect(await toDo(confirm)).toEqual(['to do', 'to do', 'to do'])
    expect(await isClosed(confirm)).toBe(true)
  })

  it('opens the spectrum of the best point, and counts it once it was in view', async () => {
    await confirm.getByRole('button', { name: /^Open point \d+$/ }).click()
    await panel.getByRole('slider', { name: 'Read the spectrum' }).waitFor()
    await expect.poll(() => toDo(confirm), { timeout: PATIENT_MS }).toEqual(['done', 'to do', 'to do'])
    expect(await isClosed(confirm)).toBe(true)
  })

  it('lets through only the band that was dragged out on the spectrum', async () => {
    await dragAcross(page, panel.locator('canvas.spectrum-canvas'), 0.45, 0.65, size)
    const [lowHz, highHz] = [await hertz(panel, 'Pitches from'), await hertz(panel, 'Pitches up to')]
    expect(lowHz).toBeGreaterThan(200)
    expect(highHz).toBeGreaterThan(1.3 * lowHz)
    expect(highHz).toBeLessThan(3000)
    await panel.getByRole('checkbox', { name: 'Loop a stretch' }).check() // else it may end before it was listened to
    await panel.getByRole('button', { name: 'Play', exact: true }).click()
    await expect.poll(() => toDo(confirm), { timeout: PATIENT_MS }).toEqual(['done', 'done', 'to do'])
    const cursor = panel.getByRole('slider', { name: 'Place in the clip' })
    const before = Number(await cursor.getAttribute('aria-valuenow'))
    await expect.poll(async () => Number(await cursor.getAttribute('aria-valuenow')), LATE).not.toBe(before)
    const { peak, below, within, above } = await heardNow(page, [lowHz / 2, highHz * 2])
    expect(peak).toBeGreaterThan(1e-4)
    expect(peak).toBeLessThanOrEqual(EAR_CEILING)
    // The clip itself has most of its power below: the hum of the ground falls with pitch.
    expect(within).toBeGreaterThan(20 * (below + above))
  })

  it('asks for one point beside it, and opens the answer once that was heard', async () => {
    expect(await isClosed(confirm)).toBe(true)
    const flank = Number(
      /of point (\d+)/.exec((await confirm.textContent())!.replace(/\u00a0/g, ' ').split('beside it')[1]!)![1],
    )
    await panel.getByRole('radio', { name: `Point ${flank}, air on` }).check()
    await expect.poll(() => toDo(confirm), { timeout: PATIENT_MS }).toEqual(['done', 'done', 'done'])
    await panel.getByRole('button', { name: 'Pause' }).click()
    await expect.poll(async () => (await heardNow(page, [60, 8000])).peak, LATE).toBeLessThan(1e-4)
    expect((await savedAnswer(page)).confirmed).toBe(false)
  })

  it('has nothing that an accessibility checker finds, light and dark, nor have its tables', async () => {
    expect(await axeFindings(page)).toEqual([])
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await axeFindings(page, { onlyContrast: true })).toEqual([])
    await page.emulateMedia({ colorScheme: 'light' })
    await panel.getByText('As a table', { exact: true }).click()
    expect(await axeFindings(page, { within: '.disclosure[open]' })).toEqual([])
    await panel.getByText('As a table', { exact: true }).click()
    await panel.getByText(/^Rings as a table/).click()
    expect(await axeFindings(page, { within: '.disclosure[open] tr:nth-child(-n + 3)' })).toEqual([])
  })

  it('keeps a yes with its note, word for word, and finds both again after a reload', async () => {
    await confirm.getByRole('radio', { name: 'Yes' }).check()
    await confirm.getByLabel('Note').fill(NOTE)
    await confirm.getByRole('button', { name: 'Save what I heard' }).click()
    expect(await page.getByText('Not confirmed by ear.').count()).toBe(0)
    expect((await savedAnswer(page)).confirmed).toBe(true)
    await page.getByText('Saved', { exact: true }).waitFor()
    await page.reload()
    await page.getByRole('heading', { name: 'Located' }).waitFor()
    expect(await page.getByText('Not confirmed by ear.').count()).toBe(0)
    expect(await confirm.getByText(`Note: ${NOTE}`).isVisible()).toBe(true)
    expect((await savedAnswer(page)).confirmed).toBe(true)
  })

  it('brings no error to the console and asks nobody else for anything', () => {
    expect(opened.troubles).toEqual([])
  })
})

async function toDo(confirm: Locator): Promise<string[]> {
  return confirm.locator('.confirm-state').allTextContents()
}

/** Neither the question nor its button can be answered. */
async function isClosed(confirm: Locator): Promise<boolean> {
  const button = await confirm.getByRole('button', { name: 'Save what I heard' }).isDisabled()
  return button && (await confirm.getByRole('radio', { name: 'Yes' }).isDisabled())
}

async function hertz(panel: Locator, label: string): Promise<number> {
  return Number(await panel.getByLabel(label, { exact: true }).inputValue())
}

/** Drags from one share of the width to another: with a finger on a phone, with the mouse on a desk. */
async function dragAcross(page: Page, target: Locator, from: number, to: number, size: ScreenSize): Promise<void> {
  await target.scrollIntoViewIfNeeded()
  const box = (await target.boundingBox())!
  const y = box.y + box.height / 2
  const xs = Array.from({ length: 8 }, (_, i) => box.x + box.width * (from + ((to - from) * i) / 7))
  if (size === 'desk') {
    await page.mouse.move(xs[0]!, y)
    await page.mouse.down()
    for (const x of xs) await page.mouse.move(x, y)
    await page.mouse.up()
    return
  }
  const browser = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
    browser.send('Input.dispatchTouchEvent', { type, touchPoints: points })
  await touch('touchStart', [{ x: xs[0]!, y }])
  for (const x of xs) await touch('touchMove', [{ x, y }])
  await touch('touchEnd', [])
  await browser.detach()
}
