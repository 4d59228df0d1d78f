import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { zipSync } from 'fflate'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { fetchPackage } from '../support/realSounds/fetchPackage'
import { goToScreen, openYard, PATIENT_MS, root, savedAnswer, type Yard, type YardPage } from './yardPage'

/** Would run if any of it were taken for markup. */
const MARKUP = '<img src=x onerror=document.title=1>'
const ANSWERED = /^(?:Located|Unsure|No leak heard)$/

/** A brook, packed as Ogg Vorbis: what is read of it has lost something. */
const BROOK = 'usr/share/games/minetest/games/minetest_game/mods/env_sounds/sounds/env_sounds_water.1.ogg'

let folder: string
let yard: Yard
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-opening-'))
  yard = await openYard()
})
afterAll(async () => {
  await yard.close()
  rmSync(folder, { recursive: true })
})

describe('opening on a phone', () => {
  let opened: YardPage
  let page: Page
  beforeAll(async () => {
    opened = await yard.open('phone')
    page = opened.page
    page.setDefaultTimeout(PATIENT_MS)
  })
  afterAll(() => opened.close())

  it('takes a sweep folder, sets aside the clip that is not there, and shows its texts as text', async () => {
    const sheet = [
      'point,along_m,file,sweep,note',
      ...[6, 7, 8, 9].map((point) => `${point},${point - 1},0${point}-on.wav,${MARKUP},${MARKUP}`),
      `10,9,${MARKUP}.wav,${MARKUP},`,
    ]
    await page.locator('[data-picker=folder]').setInputFiles(sweepFolder('walk', sheet.join('\r\n')))
    await answer(page, 'walk')
    await page.getByText(`${MARKUP}.wav: The clip is not there.`).waitFor()
    await goToScreen(page, 'Line')
    await page.getByText(`Sweep ${MARKUP}: 5 clips`).waitFor()
    expect(await page.locator('img').count()).toBe(0)
    expect(await page.title()).toBe('Line · Yardhark')
  })

  it.each([
    ['a sheet with a word for a distance', 'point,along_m,file\n6,five,06-on.wav\n', /row 2.*along_m.*number/],
    ['a sheet whose clips are all missing', 'point,along_m,file\n6,5,gone.wav\n', /clip it names is not there/],
  ])('refuses %s on the screen it was opened on, and changes nothing', async (_, sheet, message) => {
    await goToScreen(page, 'Jobs')
    const before = await jobNames(page)
    await page.locator('[data-picker=folder]').setInputFiles(sweepFolder('broken', sheet))
    const alert = page.getByRole('alert')
    await alert.waitFor()
    expect(await alert.textContent()).toMatch(message)
    expect(await alert.textContent()).toContain('Nothing here was changed.')
    expect(await jobNames(page)).toEqual(before)
    await alert.getByRole('button', { name: 'Dismiss' }).click()
  })

  it('takes a zip of a sweep folder', async () => {
    const files = Object.fromEntries(
      ['sweep.csv', '06-on.wav', '07-on.wav', '08-on.wav'].map((name) => [`yard/${name}`, clipOrSheet(name)]),
    )
    const zip = { name: 'zipped.zip', mimeType: 'application/zip', buffer: Buffer.from(zipSync(files, { level: 0 })) }
    await page.locator('[data-picker=files]').setInputFiles(zip)
    await answer(page, 'zipped')
  })

  it('asks for the spacing of loose clips, goes on with no other than the one in the field, and marks what is lossy', async () => {
    await goToScreen(page, 'Jobs')
    const brook = join(await fetchPackage('minetest-data'), BROOK)
    const buffer = (path: string) => readFileSync(path)
    await page.locator('[data-picker=files]').setInputFiles([
      ...[6, 7, 8].map((point) => ({
        name: `${point}.wav`,
        mimeType: 'audio/wav',
        buffer: buffer(demo(`0${point}-on.wav`)),
      })),
      { name: '10.ogg', mimeType: 'audio/ogg', buffer: buffer(brook) },
    ])
    const spacing = page.getByLabel('From point to point')
    const goOn = page.getByRole('button', { name: 'Open them so' })
    await spacing.waitFor()
    expect(await goOn.isDisabled()).toBe(true)
    await spacing.fill('150')
    expect(await goOn.isDisabled()).toBe(false)
    await spacing.fill('15000')
    expect(await goOn.isDisabled()).toBe(true)
    await spacing.fill('1.5')
    expect(await page.getByText('So point 6 lies at 0.00 m and point 10 at 6.00 m along the line.').isVisible()).toBe(
      true,
    )
    await goOn.click()
    await answer(page, 'Loose clips')
    await page.getByText('Noted', { exact: true }).click()
    await page.getByText(/^10\.ogg: The clip is not WAV and may have lost something/).waitFor()
  })

  it('lets a wrong spacing be mended: the points move, the answer follows, and undo moves them back', async () => {
    await goToScreen(page, 'Line')
    const spacing = page.getByLabel('From point to point')
    expect(await spacing.inputValue()).toBe('1.5')
    await spacing.fill('1')
    await page.getByLabel('Point 6 lies at').fill('2')
    await page.getByLabel('Point 6 lies at').press('Tab')
    await goToScreen(page, 'Place')
    await expect.poll(() => alongsM(page), { timeout: PATIENT_MS }).toEqual([2, 3, 4, 6])
    await page.getByRole('button', { name: 'Undo' }).click()
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => alongsM(page), { timeout: PATIENT_MS }).toEqual([0, 1.5, 3, 6])
  })

  it('takes a folder that is dropped on it', async () => {
    await goToScreen(page, 'Jobs')
    const { x, y } = (await page.getByRole('heading', { name: 'Open recordings' }).boundingBox())!
    const browser = await page.context().newCDPSession(page)
    const data = {
      items: [],
      files: [sweepFolder('dropped', clipOrSheet('sweep.csv').toString())],
      dragOperationsMask: 1,
    }
    for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
      await browser.send('Input.dispatchDragEvent', { type, x, y, data })
    }
    await browser.detach()
    await answer(page, 'dropped')
  })

  it('lets go of an opening that is cancelled, as if it had never begun', async () => {
    await goToScreen(page, 'Jobs')
    await page.getByText('Loose clips').first().waitFor()
    const before = await jobNames(page)
    let letThrough = () => {}
    const held = new Promise<void>((resolve) => {
      letThrough = resolve
    })
    await page.route('**/demo/*.wav', async (route) => {
      await held
      await route.abort().catch(() => undefined)
    })
    await page.getByRole('button', { name: 'Look at the invented job' }).click()
    await page.getByRole('button', { name: 'Cancel' }).click()
    letThrough()
    await page.unroute('**/demo/*.wav')
    expect(await page.getByRole('button', { name: 'Cancel' }).count()).toBe(0)
    expect(await jobNames(page)).toEqual(before)
  })

  it('stops listening when told so, and goes on when asked', async () => {
    await page.getByRole('button', { name: 'Look at the invented job' }).click()
    await page.getByText('Listening to the clips.').waitFor()
    await page.getByRole('button', { name: 'Cancel' }).click()
    await page.getByText('Working out was cancelled.').waitFor()
    expect(await page.getByRole('heading', { name: ANSWERED }).count()).toBe(0)
    await page.getByRole('button', { name: 'Go on' }).click()
    await page.getByRole('heading', { name: 'Located' }).waitFor({ timeout: PATIENT_MS })
  })

  it('brings no fault, and asks nobody else for anything', () => {
    expect(opened.troubles).toEqual([])
  })
})

const demo = (name: string) => resolve(root, 'demo-audio', name)

/** A clip of the demo; or a sheet for three of its points. */
function clipOrSheet(name: string): Buffer {
  if (name !== 'sweep.csv') return readFileSync(demo(name))
  return Buffer.from(
    ['point,along_m,file', ...[6, 7, 8].map((point) => `${point},${point - 1},0${point}-on.wav`)].join('\n'),
  )
}

/** A folder with this sheet and all clips of the demo that it names. */
function sweepFolder(name: string, sheet: string): string {
  const path = join(folder, name)
  rmSync(path, { recursive: true, force: true })
  mkdirSync(path)
  writeFileSync(join(path, 'sweep.csv'), sheet)
  for (const clip of readdirSync(demo(''))) if (sheet.includes(clip)) copyFileSync(demo(clip), join(path, clip))
  return path
}

/** Waits for the answer of the job with this name. */
async function answer(page: Page, job: string): Promise<void> {
  await page.getByRole('heading', { level: 1, name: `Place: ${job}` }).waitFor()
  await page.getByRole('heading', { name: ANSWERED }).waitFor({ timeout: PATIENT_MS })
}

/** Where the points of the saved answer lie, by number. */
async function alongsM(page: Page): Promise<number[]> {
  const { points } = await savedAnswer(page)
  return [...points].sort((a, b) => a.point - b.point).map((point) => point.along_m)
}

async function jobNames(page: Page): Promise<string[]> {
  return page.locator('.job-name').allTextContents()
}
