import type { BrowserContext, Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { GaugeReading } from '../../shared/pressure/gaugeLog'
import { DEFAULT_HOLD_RULES } from '../../shared/pressure/gaugeLog'
import { judgeHold } from '../../shared/pressure/judgeHold'
import { axeFindings, goToScreen, openDemo, openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

let yard: Yard
beforeAll(async () => {
  yard = await openYard()
})
afterAll(() => yard.close())

/** A gauge that loses a step every half minute. */
const PSI = [11, 10.9, 10.9, 10.8, 10.7, 10.6, 10.6, 10.5, 10.4, 10.3, 10.3, 10.2]
const START_MS = Date.UTC(2026, 4, 12, 9, 0, 0)

describe('a pressure test on a phone', () => {
  let opened: YardPage
  let page: Page
  let verdict: Locator
  beforeAll(async () => {
    opened = await yard.open('phone')
    page = opened.page
    page.setDefaultTimeout(PATIENT_MS)
    await openDemo(page)
    await at(opened.context, 0)
    await goToScreen(page, 'Pressure')
    verdict = page.locator('.hold-verdict')
  })
  afterAll(() => opened.close())

  it('begins with what can hurt, until it was read', async () => {
    await page.getByText('Test with water, never with air.').waitFor()
    await page.getByRole('button', { name: 'Read: hide them in this job' }).click()
    expect(await page.getByText('Test with water, never with air.').count()).toBe(0)
  })

  it('keeps the complaint', async () => {
    await page.getByText('Complaint and isolation').click()
    await page.getByLabel('What was complained of').fill('Loses two centimetres a day')
    await page.getByRole('checkbox', { name: 'Pump' }).check()
    await page.getByRole('radio', { name: 'Poorly' }).check()
    await page.getByText('A crushed line both leaks and blocks').waitFor()
  })

  it('takes a reading with one tap, on a clock that starts with the first', async () => {
    await page.getByRole('button', { name: 'New test' }).click()
    await page.getByLabel('What is tested').fill('Whole line')
    await page.getByRole('radio', { name: 'psi', exact: true }).check()
    await page.getByText('Start the clock when the needle rests.').waitFor()
    await page.getByRole('button', { name: 'Start the clock at 11.0 psi' }).click()
    for (const [i, psi] of PSI.entries()) {
      if (i === 0) continue
      await at(opened.context, 30 * i)
      if (psi < PSI[i - 1]!) await page.getByRole('button', { name: '0.1 psi lower' }).click()
      await page.getByRole('button', { name: `Keep ${psi.toFixed(1)} psi` }).click()
    }
    await page.getByRole('heading', { name: `Readings: ${PSI.length}` }).waitFor()
    await page.getByText('Time reached').waitFor()
  })

  it('says what the core says, and whose the drop is only when every plug was looked at', async () => {
    const { verdict: told, fit } = judgeHold(byTheCore())
    expect(told).toBe('drops')
    await expect.poll(() => verdict.textContent(), { timeout: PATIENT_MS }).toBe('Drops')
    const fall = (fit!.fallKpa.value / 6.894757).toFixed(1)
    await page.getByText(new RegExp(`fell by ${fall}\\d?.psi`)).waitFor()
    await page.getByText('Fittings not checked', { exact: true }).waitFor()
    for (const [i, name] of ['Plug at the basin', 'Cap at the filter'].entries()) {
      await page.getByRole('button', { name: 'Add a plug or fitting' }).click()
      await page.getByLabel(`Plug or fitting ${i + 1}`).fill(name)
      await page.getByRole('radio', { name: 'Tight', exact: true }).nth(i).check()
      await page.getByLabel('Looked at with').nth(i).selectOption({ label: 'Dye under water' })
    }
    await page.getByText("The line's own", { exact: true }).waitFor()
  })

  it('turns the drop into water and a hole, and says that a slow one proves no small leak', async () => {
    await page.getByLabel('Nominal size of the pipe').selectOption({ label: '2 in' })
    await page.getByText('a slow drop is no proof of a small leak').waitFor()
    expect(
      await page.getByRole('img', { name: /^Gauge over .*: 12 readings, from 11.00.psi to 10.20.psi$/ }).count(),
    ).toBe(1)
  })

  it('points a slip of the unit out, and leaves it to a person', async () => {
    await page.getByText('Type readings from paper').click()
    const form = page.locator('.disclosure', { hasText: 'Type readings from paper' })
    await form.getByLabel('Time on the clock, s').fill('345')
    await form.getByLabel('Gauge, psi').fill('70.3')
    await form.getByRole('button', { name: 'Add this reading' }).click()
    await page.getByText('Reading 13 stands to the others as one unit to another.').waitFor()
    await expect.poll(() => verdict.textContent(), { timeout: PATIENT_MS }).toBe('Cannot tell')
    await page.getByRole('button', { name: 'Look at reading 13' }).first().click()
    await page.getByLabel('Mistyped: leave it out of the verdict').check()
    await expect.poll(() => verdict.textContent(), { timeout: PATIENT_MS }).toBe('Drops')
  })

  it('has nothing that an accessibility checker finds, light and dark', async () => {
    expect(await axeFindings(page)).toEqual([])
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await axeFindings(page, { onlyContrast: true })).toEqual([])
    await page.emulateMedia({ colorScheme: 'light' })
  })

  it('is all there after a reload, with the clock still running', async () => {
    await page.getByText('Saved', { exact: true }).waitFor()
    await at(opened.context, 600)
    await page.reload()
    await expect.poll(() => verdict.textContent(), { timeout: PATIENT_MS }).toBe('Drops')
    await page.getByText("The line's own", { exact: true }).waitFor()
    expect(await page.getByLabel('What is tested').inputValue()).toBe('Whole line')
    await page.getByRole('heading', { name: 'Readings: 13' }).waitFor()
    await expect.poll(() => page.locator('.clock-time').textContent(), { timeout: PATIENT_MS }).toMatch(/10:\d\d$/)
    await page.getByRole('button', { name: 'Show the cautions' }).waitFor()
    await page.getByText('Complaint and isolation').click()
    expect(await page.getByLabel('What was complained of').inputValue()).toBe('Loses two centimetres a day')
  })

  it('is closed with its verdict, which stays as it was given', async () => {
    await page.getByRole('button', { name: 'Close the test' }).click()
    await page.getByText('Closed with the verdict "Drops"').waitFor()
    await expect.poll(() => page.getByLabel('What is tested').isDisabled(), { timeout: PATIENT_MS }).toBe(true)
    expect(await page.getByRole('button', { name: /^Keep / }).count()).toBe(0)
    expect(opened.troubles).toEqual([])
  })
})

/** The browser's clock, so many seconds after the test was begun. */
function at(context: BrowserContext, afterS: number): Promise<void> {
  return context.clock.setSystemTime(START_MS + 1000 * afterS)
}

function byTheCore() {
  const readings = PSI.map(
    (value, i): GaugeReading => ({ id: `r${i}`, timeS: 30 * i, value, note: '', leftOut: false }),
  )
  return {
    unit: 'psi' as const,
    resolution: 0.1,
    readings,
    rules: DEFAULT_HOLD_RULES.psi,
    cameUp: null,
    startTemperatureC: null,
    endTemperatureC: null,
    fittings: [],
  }
}
