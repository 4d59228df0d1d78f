import { resolve } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CAUTIONS } from '../../shared/job/cautions'
import { WORDS } from '../../shared/words/words'
import { listenIn } from './ears'
import { axeFindings, goToScreen, openDemo, openYard, PATIENT_MS, root, type Yard, type YardPage } from './yardPage'

let yard: Yard
beforeAll(async () => {
  yard = await openYard()
})
afterAll(() => yard.close())

const START_MS = Date.UTC(2026, 4, 12, 9, 0, 0)
/** A gauge that loses a step every half minute, and one that stays. */
const FALLING_PSI = [11, 10.9, 10.9, 10.8, 10.7, 10.6, 10.6, 10.5, 10.4, 10.3, 10.3, 10.2]
const STILL_PSI = FALLING_PSI.map(() => 11)

describe('one job on a phone, from the complaint to the printed report', () => {
  let opened: YardPage
  let page: Page
  let passedS = 0
  const shoot = async (name: string) => {
    const folder = process.env.SCREENSHOTS
    if (folder) await page.screenshot({ path: `${folder}/whole-${name}.png`, fullPage: true })
  }
  const wait = async (s: number) => {
    passedS += s
    await opened.context.clock.setSystemTime(START_MS + 1000 * passedS)
  }
  /** Taps readings in, half a minute apart, and closes the test. */
  const takeTest = async (psi: readonly number[], verdict: string) => {
    await page.getByRole('button', { name: `Start the clock at ${psi[0]!.toFixed(1)} psi` }).click()
    for (const [i, value] of psi.entries()) {
      if (i === 0) continue
      await wait(30)
      if (value < psi[i - 1]!) await page.getByRole('button', { name: '0.1 psi lower' }).click()
      await page.getByRole('button', { name: `Keep ${value.toFixed(1)} psi` }).click()
    }
    await expect.poll(() => page.locator('.hold-verdict').textContent(), { timeout: PATIENT_MS }).toBe(verdict)
  }
  const closeTest = async (verdict: string) => {
    await page.getByRole('button', { name: 'Close the test' }).click()
    await page.getByText(`Closed with the verdict "${verdict}"`).waitFor()
  }
  const testPart = async (name: string, button: RegExp, psi: readonly number[], verdict: string) => {
    await goToScreen(page, 'Mend')
    await page.getByRole('button', { name: button }).click()
    await page.getByLabel('What is tested').waitFor()
    expect(await page.getByLabel('What is tested').inputValue()).toBe(name)
    await takeTest(psi, verdict)
    await closeTest(verdict)
  }
  beforeAll(async () => {
    opened = await yard.open('phone', {}, listenIn)
    page = opened.page
    page.setDefaultTimeout(PATIENT_MS)
    await openDemo(page)
    await wait(0)
  })
  afterAll(() => opened.close())

  it('the complaint, and a test that drops with its plugs checked', async () => {
    await goToScreen(page, 'Pressure')
    await page.getByText('Complaint and isolation').click()
    await page.getByLabel('What was complained of').fill('The basin loses two centimetres a day')
    await page.getByRole('checkbox', { name: 'Pump' }).check()
    await page.getByRole('checkbox', { name: 'Basin' }).check()
    await page.getByLabel('Which line was shut off, and how').fill('plug at the basin, cap at the filter')
    await page.getByRole('radio', { name: 'Freely' }).check()
    await page.getByRole('button', { name: 'New test' }).click()
    await page.getByLabel('What is tested').fill('Whole line')
    await page.getByRole('radio', { name: 'psi', exact: true }).check()
    await takeTest(FALLING_PSI, 'Drops')
    for (const [i, name] of ['Plug at the basin', 'Cap at the filter'].entries()) {
      await page.getByRole('button', { name: 'Add a plug or fitting' }).click()
      await page.getByLabel(`Plug or fitting ${i + 1}`).fill(name)
      await page.getByRole('radio', { name: 'Tight', exact: true }).nth(i).check()
      await page.getByLabel('Looked at with').nth(i).selectOption({ label: 'Dye under water' })
    }
    await page.getByText("The line's own", { exact: true }).waitFor()
    await closeTest('Drops')
    await shoot('pressure')
  })

  it('the place, looked at and listened to, and confirmed by ear', async () => {
    await goToScreen(page, 'Place')
    const confirm = page.getByRole('region', { name: 'Heard by a person' })
    const panel = page.getByRole('region', { name: /^Point \d+$/ })
    const toDo = () => confirm.locator('.confirm-state').allTextContents()
    const patient = { timeout: PATIENT_MS }
    await confirm.getByRole('button', { name: /^Open point \d+$/ }).click()
    await panel.getByRole('slider', { name: 'Read the spectrum' }).waitFor()
    await expect.poll(toDo, patient).toEqual(['done', 'to do', 'to do'])
    await panel.getByRole('checkbox', { name: 'Loop a stretch' }).check()
    await panel.getByRole('button', { name: 'Play', exact: true }).click()
    await expect.poll(toDo, patient).toEqual(['done', 'done', 'to do'])
    const beside = (await confirm.textContent())!.replaceAll('\u00a0', ' ').split('beside it')[1]!
    const [, flank] = /of point (\d+)/.exec(beside)!
    await panel.getByRole('radio', { name: `Point ${flank}, air on` }).check()
    await expect.poll(toDo, patient).toEqual(['done', 'done', 'done'])
    await panel.getByRole('button', { name: 'Pause' }).click()
    await confirm.getByRole('radio', { name: 'Yes' }).check()
    await confirm.getByLabel('Note').fill('Gurgles in bursts at 7, quiet at 5.')
    await confirm.getByRole('button', { name: 'Save what I heard' }).click()
    await page.getByText('Confirmed by ear.').first().waitFor()
  })

  it('the hole taped from two marks, opened, and the cause found with a photo', async () => {
    await page.getByText('Dig sketch', { exact: true }).last().click()
    for (const [mark, ends, tapes] of [
      ['A', ['point 1', 'point 5'], ['3.2', '3.4']],
      ['B', ['point 5', 'point 9'], ['3.6', '3']],
    ] as const) {
      await page.getByRole('button', { name: `Put mark ${mark}` }).click()
      const fields = page.getByRole('group', { name: `Mark ${mark}` })
      await fields.getByLabel('First tape from').selectOption(ends[0])
      await fields.getByLabel('Second tape from').selectOption(ends[1])
      await fields
        .getByLabel(/^Tape from/)
        .first()
        .fill(tapes[0])
      await fields
        .getByLabel(/^Tape from/)
        .last()
        .fill(tapes[1])
      await fields.getByText('Known by two tapes from the line.').waitFor()
    }
    await wait(3600)
    const found = page.getByRole('region', { name: 'What was found' })
    await found.getByLabel('Damage, along the line').fill('6.42')
    await found.getByLabel('Cause').selectOption('fitting')
    await found.getByLabel('Note on what was found').fill('Elbow cracked along its seam; wet sand round it.')
    await page.locator('[data-picker="found"]').setInputFiles(resolve(root, 'tests/browser/place.png'))
    await found.getByRole('img', { name: 'Photo of what was found' }).waitFor()
    await found.getByRole('button', { name: 'Keep what was found' }).click()
    await found.getByText(/^Found by opening, 6\.42/).waitFor()
    await shoot('place')
  })

  it('cut, and each side tested by itself, the one that proves most first', async () => {
    await goToScreen(page, 'Mend')
    await page.getByLabel('Cut at, along the line').fill('6.1')
    await page.getByRole('button', { name: 'Make two parts' }).click()
    await testPart('Start side', /^Test Start side$/, STILL_PSI, 'Holds')
    await testPart('End side', /^Test End side$/, FALLING_PSI, 'Drops')
  })

  it('the joint made, and its timer says when to look after the app was closed', async () => {
    await goToScreen(page, 'Mend')
    await page.getByRole('button', { name: 'Put in the usual steps' }).click()
    await page.getByRole('checkbox', { name: 'Step 1 is done' }).check()
    await page.getByRole('checkbox', { name: 'Step 2 is done' }).check()
    await page.getByRole('radio', { name: 'two-part, bonds wet' }).check()
    await page.getByRole('button', { name: 'Joint made now: start the timer' }).click()
    await page.getByText(/^It can be worked/).waitFor()
    await page.getByText('Saved', { exact: true }).waitFor()
    await wait(21 * 60)
    await page.reload()
    await page.getByText(/^Look at the left-over dab now\./).waitFor()
    await page.getByText(/prove the parts on both sides of it once more/).waitFor()
  })

  it('both sides proved again, and the job closed with its answer', async () => {
    await testPart('Start side', /^Test Start side again$/, STILL_PSI, 'Holds')
    await testPart('End side', /^Test End side again$/, STILL_PSI, 'Holds')
    await goToScreen(page, 'Mend')
    await page.getByText('Every part was proved after the joint was made.').waitFor()
    await wait(600)
    await page.getByRole('button', { name: 'Close the job' }).click()
    await page.getByRole('button', { name: 'Open the job again' }).waitFor()
    await page.getByText('Saved', { exact: true }).waitFor()
    await shoot('mend')
  })

  it('the report tells all of it, from what was kept', async () => {
    await page.reload() // nothing of it is worked out anew
    await goToScreen(page, 'Place')
    await page.getByText(/^The job was closed\. The report tells the answer that was kept/).waitFor()
    await goToScreen(page, 'Report')
    const customer = page.getByRole('article').first()
    await customer.getByText('Somebody looked at the spectrum, listened, and confirmed it by ear.').waitFor()
    const text = (await customer.textContent())!.replaceAll('\u00a0', ' ')
    for (const said of [
      'The complaint was: "The basin loses two centimetres a day".',
      'Whole line: the pressure dropped.',
      'Plugs and fittings: Plug at the basin: Tight, Dye under water',
      'The leak was located',
      'Found by opening, 6.42 m along the line. Cause: fitting.',
      'held it',
      'The line was cut 6.10 m along.',
      'Start side, 0.00 m to 6.10 m: held its pressure test after the joint was made.',
      'No gauge can see that.',
    ]) {
      expect(text).toContain(said)
    }
    for (const key of Object.values(CAUTIONS).flat()) expect(text).toContain(WORDS[key].text)
    expect(await customer.getByRole('img', { name: /^Gauge over/ }).count()).toBe(5)
    await customer.getByRole('img', { name: 'Photo of what was found' }).waitFor()
    const office = (await page.getByRole('article').last().textContent())!
    expect(office).toMatch(/kept when the job was closed\. It is not worked out again/)
    expect(
      await page
        .getByRole('article')
        .last()
        .getByRole('img', { name: /^Point \d+$/ })
        .count(),
    ).toBe(14)
    await shoot('report')
    expect(await axeFindings(page)).toEqual([])
  })

  it('prints on A4 and on Letter: one or two pages for the customer, and the office on pages of its own', async () => {
    await page.emulateMedia({ media: 'print' })
    expect(await page.getByRole('navigation', { name: 'Screens' }).isVisible()).toBe(false)
    const pages = async (format: 'A4' | 'Letter', name: string) => {
      const folder = process.env.SCREENSHOTS
      const pdf = await page.pdf({ format, ...(folder && { path: `${folder}/${name}-${format}.pdf` }) })
      return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length
    }
    for (const format of ['A4', 'Letter'] as const) expect(await pages(format, 'customer')).toBeLessThanOrEqual(2)
    await page.emulateMedia({ media: 'screen' })
    await page.getByRole('checkbox', { name: 'Print the page for the office too' }).check()
    await page.emulateMedia({ media: 'print' })
    expect(await page.getByRole('heading', { name: /^For the office/ }).isVisible()).toBe(true)
    for (const format of ['A4', 'Letter'] as const) expect(await pages(format, 'office')).toBeGreaterThan(2)
    expect(opened.troubles).toEqual([])
  })
})
