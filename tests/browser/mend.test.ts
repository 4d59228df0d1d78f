import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFindings, goToScreen, openDemo, openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

let yard: Yard
beforeAll(async () => {
  yard = await openYard()
})
afterAll(() => yard.close())

describe('after the place was named, on a phone', () => {
  let opened: YardPage
  let page: Page
  const shoot = async (name: string) => {
    const folder = process.env.SCREENSHOTS
    if (folder) await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true })
  }
  beforeAll(async () => {
    opened = await yard.open('phone')
    page = opened.page
    page.setDefaultTimeout(PATIENT_MS)
    await openDemo(page)
    await goToScreen(page, 'Mend')
  })
  afterAll(() => opened.close())

  it('what was found is kept, and the window said to have held it or not', async () => {
    const found = page.getByRole('region', { name: 'What was found' })
    const keep = found.getByRole('button', { name: 'Keep what was found' })
    expect(await keep.isDisabled()).toBe(true)
    await found.getByLabel('Damage, along the line').fill('6.4')
    await found.getByLabel('Cause').selectOption('fitting')
    await keep.click()
    await found.getByText(/^Found by opening, 6\.40.m along the line\. Cause: fitting\.$/).waitFor()
    await found.getByText(/^The window .* held it/).waitFor()
    await found.getByText(/1 of 1 windows held/).waitFor()
  })

  it('the line is cut into parts, and a side test begins in the name of its part', async () => {
    await page.getByLabel('Cut at, along the line').fill('6')
    await page.getByRole('button', { name: 'Make two parts' }).click()
    await page.getByRole('heading', { name: /^Start side/ }).waitFor()
    expect(await page.getByText('Not tested yet').count()).toBe(2)
    await page.getByRole('button', { name: 'Test Start side' }).click()
    await page.getByLabel('Test', { exact: true }).waitFor()
    await goToScreen(page, 'Mend')
    await page.getByText('Its test is not closed yet').waitFor()
  })

  it('solvent cement has no usual time: the timer waits for the table of the maker', async () => {
    await page.getByRole('radio', { name: 'solvent cement' }).check()
    const start = page.getByRole('button', { name: 'Joint made now: start the timer' })
    expect(await start.isDisabled()).toBe(true)
    await page.getByLabel('Before pressure, at least').fill('60')
    await page.getByLabel('Before pressure, at most').fill('120')
    expect(await start.isEnabled()).toBe(true)
  })

  it('the cure timer goes on after the page was closed, and never says that it has cured', async () => {
    await page.getByRole('radio', { name: 'two-part, bonds wet' }).check()
    await page.getByRole('button', { name: 'Put in the usual steps' }).click()
    await page.getByRole('button', { name: 'Joint made now: start the timer' }).click()
    await page.getByText(/^(?:It can be worked|Leave it alone)/).waitFor()
    await page.getByText('Saved', { exact: true }).waitFor()
    await page.reload()
    await page.getByText(/^(?:It can be worked|Leave it alone)/).waitFor()
    await shoot('mend-phone')
    expect(await axeFindings(page)).toEqual([])
  })

  it('the report has the cautions that were hidden, and says that nobody confirmed it by ear', async () => {
    const caution = 'Adhesives: gloves, fresh air'
    await page.getByText(caution).waitFor()
    await page.getByRole('button', { name: 'Read: hide them in this job' }).click()
    await page.getByText(caution).waitFor({ state: 'hidden' })
    await goToScreen(page, 'Report')
    await page.getByText(caution).waitFor()
    await page.getByText('Not confirmed by ear.').waitFor()
    await page.getByText(/^Found by opening, 6\.40/).waitFor()
    await page.getByText(/^End side, .*: not proved\.$/).waitFor()
    await shoot('report-phone')
    expect(await axeFindings(page)).toEqual([])
  })

  it('prints on A4 and on Letter without the bar of screens', async () => {
    await page.emulateMedia({ media: 'print' })
    expect(await page.getByRole('navigation', { name: 'Screens' }).isVisible()).toBe(false)
    expect(await page.getByRole('heading', { name: 'Cautions' }).isVisible()).toBe(true)
    expect(await page.getByRole('heading', { name: 'For the office' }).isVisible()).toBe(false)
    for (const format of ['A4', 'Letter'] as const) {
      const folder = process.env.SCREENSHOTS
      const pdf = await page.pdf({ format, ...(folder && { path: `${folder}/report-${format}.pdf` }) })
      const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length
      expect(pages).toBeLessThanOrEqual(3)
    }
    expect(opened.troubles).toEqual([])
  })
})
