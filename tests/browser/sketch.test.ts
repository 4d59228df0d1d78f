import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sheetOf, tapSheet } from './thumb'
import { axeFindings, goToScreen, openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

let yard: Yard
let opened: YardPage
let page: Page
let pad: Locator
beforeAll(async () => {
  yard = await openYard()
  opened = await yard.open('phone', { viewport: { width: 390, height: 844 } })
  page = opened.page
  page.setDefaultTimeout(PATIENT_MS)
  pad = sheetOf(page)
})
afterAll(() => yard.close())

describe('a line sketched by thumb on a phone', () => {
  it('begins with a job made from nothing', async () => {
    await page.getByRole('button', { name: 'New job' }).click()
    await page.getByText('Tap where the line starts.').waitFor()
  })

  it('has three legs by taps, the second drawn to a right angle, the third as long as it was typed', async () => {
    await tap(0.14, 0.78)
    await tap(0.58, 0.775)
    await tap(0.6, 0.4)
    await tap(0.85, 0.41)
    await page.getByLabel('How long leg 3 is').fill('3')
    await page.getByLabel('How long leg 3 is').press('Tab')
    expect(await cornerLabels()).toEqual([
      'Start',
      expect.stringMatching(/^Corner 1, leg 1 is [45]\.\d0\sm$/),
      expect.stringMatching(/^Corner 2, leg 2 is [34]\.\d0\sm, square to the left$/),
      expect.stringMatching(/^End, leg 3 is 3\.00\sm, square to the right$/),
    ])
  })

  it('lets a corner be dragged, drawn to right angles on both sides, and moved by keys', async () => {
    const before = await cornerLabels()
    await drag('corner-1', 24, 5)
    const after = await cornerLabels()
    expect(after[1]).not.toBe(before[1])
    await page.getByRole('button', { name: 'Undo' }).click()
    expect(await cornerLabels()).toEqual(before)
    await handle('corner-1').focus()
    await page.keyboard.press('Shift+ArrowRight')
    expect((await cornerLabels())[1]).not.toBe(before[1])
    await page.keyboard.press('Shift+ArrowLeft')
    expect((await cornerLabels())[1]).toBe(before[1])
  })

  it('gets a stretch of pavers by two taps, an elbow and a sign', async () => {
    await page.getByRole('radio', { name: 'Covers' }).check()
    await tap(0.3, 0.775)
    await tap(0.5, 0.775)
    await page.getByRole('heading', { name: /^Pavers, / }).waitFor()
    await page.getByRole('radio', { name: 'Fittings' }).check()
    await tap(0.58, 0.775)
    await page.getByRole('heading', { name: 'Elbow' }).waitFor()
    await page.getByRole('radio', { name: 'Signs' }).check()
    await page.getByLabel('What was seen or heard').selectOption('sunk paver')
    await tap(0.42, 0.66)
    await page.getByLabel('Note', { exact: true }).fill('a coin fits under it')
    await page.getByLabel('Note', { exact: true }).press('Tab')
    expect(await handleLabels('sign-')).toEqual([expect.stringMatching(/^Sunk paver at \d\.\d\d\sm$/)])
  })

  it('gets points at a spacing, one moved along, one added between, and all of them numbered anew', async () => {
    await page.getByRole('radio', { name: 'Points' }).check()
    await page.getByLabel('A point every').fill('2')
    await page.getByRole('button', { name: 'Lay points' }).click()
    const laid = await handleLabels('peg-')
    expect(laid.slice(0, 3)).toEqual([0, 1, 2].map((i) => `Point ${i + 1}, ${2 * i}.00 m along. No clip yet.`))
    await drag('peg-2', 15, 0)
    const moved = await handleLabels('peg-')
    expect(moved[1]).toMatch(/^Point 2, 2\.[1-9]0 m along/)
    expect(moved.toSpliced(1, 1)).toEqual(laid.toSpliced(1, 1))
    await page.getByRole('button', { name: 'Add one between 2 and 3' }).click()
    await page.getByRole('button', { name: 'Number them anew' }).click()
    const numbered = await handleLabels('peg-')
    expect(numbered).toHaveLength(laid.length + 1)
    expect(numbered[2]).toMatch(/^Point 3, 3\.\d\d m along/)
    expect(numbered[3]).toMatch(/^Point 4, 4\.00 m along/)
  })

  it('takes back every step to nothing, and does them all again', async () => {
    const whole = await handleLabels('peg-')
    const undo = page.getByRole('button', { name: 'Undo' })
    let steps = 0
    while (await undo.isEnabled()) {
      await undo.click()
      steps++
    }
    expect(steps).toBeGreaterThan(10)
    await page.getByRole('radio', { name: 'Legs' }).check()
    await page.getByText('Tap where the line starts.').waitFor()
    expect(await page.locator('[data-handle]').count()).toBe(0)
    for (let step = 0; step < steps; step++) await page.getByRole('button', { name: 'Redo' }).click()
    expect(await page.getByRole('button', { name: 'Redo' }).isDisabled()).toBe(true)
    await page.getByRole('radio', { name: 'Points' }).check()
    expect(await handleLabels('peg-')).toEqual(whole)
  })

  it('takes a photo under it, scaled by two taps and a typed distance', async () => {
    await page.getByRole('radio', { name: 'Photo' }).check()
    await page.locator('[data-picker=photo]').setInputFiles({
      name: 'yard.png',
      mimeType: 'image/png',
      buffer: await pictureBytes(),
    })
    await pad.locator('image').waitFor()
    await page.getByText('The scale of the photo is only guessed so far.').waitFor()
    await tap(0.3, 0.3)
    await tap(0.7, 0.3)
    const before = Number(await pad.locator('image').getAttribute('width'))
    await page.getByLabel('Distance between the marks').fill('50')
    await page.getByRole('button', { name: 'Set the scale', exact: true }).click()
    await page.getByText('The scale of the photo is only guessed so far.').waitFor({ state: 'hidden' })
    await expect.poll(async () => Number(await pad.locator('image').getAttribute('width'))).not.toBe(before)
  })

  it('says of a file that is no picture that it is none, and keeps the photo', async () => {
    const broken = { name: 'notes.png', mimeType: 'image/png', buffer: Buffer.from('no picture') }
    await page.locator('[data-picker=photo]').setInputFiles(broken)
    await page.getByText('This file is no picture that this browser can show.').waitFor()
    expect(await pad.locator('image').count()).toBe(1)
  })

  it('has targets of 48 px, and nothing that an accessibility checker finds, light or dark', async () => {
    for (const mode of ['Legs', 'Covers', 'Fittings', 'Signs', 'Points', 'Photo']) {
      await page.getByRole('radio', { name: mode }).check()
      for (const target of await pad.locator('.sketchpad-target').all()) {
        const { width, height } = (await target.boundingBox())!
        expect(Math.min(width, height)).toBeGreaterThanOrEqual(48)
      }
      expect(await axeFindings(page, { within: 'section:has(.sketchpad)' })).toEqual([])
    }
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await axeFindings(page, { within: 'section:has(.sketchpad)', onlyContrast: true })).toEqual([])
    await page.emulateMedia({ colorScheme: 'light' })
  })

  it('is all there after a reload', async () => {
    const read = async () => {
      const labels: Record<string, string[]> = {}
      for (const mode of ['Legs', 'Covers', 'Fittings', 'Signs', 'Points']) {
        await page.getByRole('radio', { name: mode }).check()
        labels[mode] = await handleLabels('')
      }
      return labels
    }
    const before = await read()
    await page.getByText('Saved', { exact: true }).waitFor()
    await page.reload()
    await pad.waitFor()
    expect(await read()).toEqual(before)
    await pad.locator('image').waitFor({ state: 'attached' })
    await goToScreen(page, 'Jobs')
    await page.getByRole('link', { name: /^New job/ }).waitFor()
  })

  it('brings no error to the console and asks nobody else for anything', () => {
    expect(opened.troubles).toEqual([])
  })
})

const tap = (x: number, y: number) => tapSheet(page, x, y)

function handle(id: string): Locator {
  return pad.locator(`[data-handle="${id}"]`)
}

async function handleLabels(start: string): Promise<string[]> {
  const all = await pad.locator(`[data-handle^="${start}"]`).all()
  const labels = await Promise.all(all.map((each) => each.getAttribute('aria-label')))
  return labels.map((label) => label!.replaceAll('\u00a0', ' '))
}

function cornerLabels(): Promise<string[]> {
  return handleLabels('corner-')
}

/** A thumb that drags a handle by so many pixels. */
async function drag(id: string, byX: number, byY: number): Promise<void> {
  await pad.scrollIntoViewIfNeeded()
  const box = (await handle(id).locator('.sketchpad-target').boundingBox())!
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  const client = await opened.context.newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: { x: number; y: number }[]) =>
    client.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: touchPoints.map((at) => ({ ...at, radiusX: 20, radiusY: 20 })),
    })
  await touch('touchStart', [{ x, y }])
  for (const share of [0.3, 0.6, 0.8, 1]) await touch('touchMove', [{ x: x + byX * share, y: y + byY * share }])
  await touch('touchEnd', [])
  await client.detach()
}

/** A picture made on the spot, so that none has to lie in the repository. */
async function pictureBytes(): Promise<Buffer> {
  const url = await page.evaluate(() => {
    const canvas = document.createElement('canvas')
    canvas.width = 400
    canvas.height = 300
    const pen = canvas.getContext('2d')!
    pen.fillStyle = '#8a9a6a'
    pen.fillRect(0, 0, 400, 300)
    pen.fillStyle = '#b9aa8c'
    pen.fillRect(0, 180, 400, 60)
    return canvas.toDataURL('image/png')
  })
  return Buffer.from(url.split(',')[1]!, 'base64')
}
