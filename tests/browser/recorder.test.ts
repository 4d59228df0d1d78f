import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { zipSync } from 'fflate'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { differencesOf } from './differencesOf'
import { savedFolder, toldByCommand } from './sweepFolder'
import { axeFindings, goToScreen, openYard, PATIENT_MS, root, savedAnswer, type Yard, type YardPage } from './yardPage'

const demo = (name: string) => readFileSync(resolve(root, 'demo-audio', name))
const wav = (name: string, buffer: Buffer) => ({ name, mimeType: 'audio/wav', buffer })
const POINTS = [5, 6, 7, 8, 9]

let folder: string
let yard: Yard
let opened: YardPage
let page: Page
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-recorder-'))
  yard = await openYard()
  opened = await yard.open('phone')
  page = opened.page
  page.setDefaultTimeout(PATIENT_MS)
  const sheet = ['point,along_m,file', ...POINTS.map((point) => `${point},${point - 1},0${point}-on.wav`)].join('\n')
  const files = Object.fromEntries(
    POINTS.map((point) => [`0${point}-on.wav`, new Uint8Array(demo(`0${point}-on.wav`))]),
  )
  const zip = Buffer.from(zipSync({ ...files, 'sweep.csv': new TextEncoder().encode(sheet) }, { level: 0 }))
  await page
    .locator('[data-picker=files]')
    .setInputFiles({ name: 'walk.zip', mimeType: 'application/zip', buffer: zip })
  await page.getByRole('heading', { name: /^(?:Located|Unsure|No leak heard)$/ }).waitFor()
})
afterAll(async () => {
  await yard.close()
  rmSync(folder, { recursive: true })
})

const pointOf = (name: string) => page.getByLabel(`Point of ${name}`)
const airOf = (name: string) => page.getByLabel(`Air of ${name}`)
const takeOf = (name: string) => page.getByLabel(`Take of ${name}`)

describe('clips of a recorder on a phone', () => {
  it('are told to points by the numbers in their names, and what fits no point is listed', async () => {
    await goToScreen(page, 'Line')
    await page
      .locator('[data-picker=files]')
      .first()
      .setInputFiles([
        wav('REC_0006.wav', demo('06-on.wav')),
        wav('REC_0007.wav', demo('07-on.wav')),
        wav('REC_0042.wav', demo('08-on.wav')),
        wav('REC_0008.wav', Buffer.from('RIFF, and nothing that is sound')),
        { name: 'notes.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF') },
      ])
    await page.getByRole('heading', { name: 'Which point each clip is of' }).waitFor()
    await page.getByText('Left out, as they are no recordings: notes.pdf.').waitFor()
    await page.getByText('Of no point yet: REC_0042.wav.').waitFor()
    expect(await pointOf('REC_0006.wav').inputValue()).toBe('6')
    expect(await pointOf('REC_0042.wav').inputValue()).toBe('')
    expect(await axeFindings(page)).toEqual([])
  })

  it('are told in order when that is asked for', async () => {
    await page.getByLabel('They are told to points').selectOption('on_off')
    await page.getByLabel('The first clip is of point').selectOption('7')
    expect(await pointOf('REC_0006.wav').inputValue()).toBe('7')
    expect(await airOf('REC_0007.wav').inputValue()).toBe('off')
    expect(await pointOf('REC_0008.wav').inputValue()).toBe('8')
    await page.getByLabel('They are told to points').selectOption('name')
    expect(await pointOf('REC_0006.wav').inputValue()).toBe('6')
  })

  it('cannot join while two say the same, and take another take by hand', async () => {
    await pointOf('REC_0042.wav').selectOption('6')
    expect(await takeOf('REC_0042.wav').inputValue()).toBe('2')
    await takeOf('REC_0042.wav').selectOption('1')
    await page.getByText('REC_0042.wav is of the same point, air and take as another clip.').waitFor()
    expect(await page.getByRole('button', { name: 'Let 4 clips join' }).isDisabled()).toBe(true)
    await pointOf('REC_0042.wav').selectOption('')
    expect(await page.getByRole('button', { name: 'Let 3 clips join' }).isDisabled()).toBe(false)
  })

  it('join as a sweep of their own; what has no point stays on the list until it has one', async () => {
    await page.getByRole('button', { name: 'Let 3 clips join' }).click()
    await page.getByText('3 clips have joined sweep 2.').waitFor()
    expect(await pointOf('REC_0042.wav').inputValue()).toBe('')
    await pointOf('REC_0042.wav').selectOption('8')
    await page.getByLabel('They join').selectOption({ label: 'Sweep 2' })
    expect(await takeOf('REC_0042.wav').inputValue()).toBe('2')
    await page.getByRole('button', { name: 'Let 1 clips join' }).click()
    await page.getByRole('heading', { name: 'Which point each clip is of' }).waitFor({ state: 'detached' })
    await page.getByText(/^Sweep 2: 4 clips/).waitFor()
  })

  it('weigh on the place beside the first sweep, and the broken one is named', async () => {
    await goToScreen(page, 'Place')
    await page.getByText(/^REC_0008\.wav: /).waitFor()
    await expect.poll(async () => (await savedAnswer(page)).clips.length, { timeout: PATIENT_MS }).toBe(9)
  })

  it('come out again as a sweep folder of the very bytes, of which the command line says the same', async () => {
    const walk = await savedFolder(page, 'Save the sweep folder as a zip', folder)
    expect(readFileSync(join(walk, 'REC_0006.wav')).equals(demo('06-on.wav'))).toBe(true)
    expect(differencesOf(toldByCommand(walk), await savedAnswer(page), 1e-9)).toEqual([])
  })

  it('come out from the list of jobs as well', async () => {
    await goToScreen(page, 'Jobs')
    await page.getByRole('button', { name: 'Save the clips of walk' }).click()
    expect(await axeFindings(page, { within: '.job-list' })).toEqual([])
    const again = await savedFolder(page, 'Save Line 1 as a zip', join(folder, 'again'))
    expect(readFileSync(join(again, 'sweep.csv'), 'utf8')).toContain('REC_0042.wav')
  })

  it('bring no fault', () => {
    expect(opened.troubles).toEqual([])
  })
})
