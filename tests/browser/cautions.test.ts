import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CAUTIONS } from '../../shared/job/cautions'
import { WORDS } from '../../shared/words/words'
import { goToScreen, openDemo, openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

let yard: Yard
beforeAll(async () => {
  yard = await openYard()
})
afterAll(() => yard.close())

/** Screens with the cautions of their step. */
const STEPS = { Pressure: 'pressure', Listen: 'sound', Place: 'dig', Mend: 'mend' } as const

describe('cautions on a phone', () => {
  let opened: YardPage
  let page: Page
  beforeAll(async () => {
    opened = await yard.open('phone')
    page = opened.page
    page.setDefaultTimeout(PATIENT_MS)
    await openDemo(page)
  })
  afterAll(() => opened.close())

  const inReport = async () => {
    await goToScreen(page, 'Report')
    const report = page.locator('[data-section="cautions"]')
    await report.waitFor()
    return (await report.textContent())!.replaceAll('\u00a0', ' ') // a number and its unit stay in one line
  }

  it('stand at every step they belong to, until they were read and hidden there', async () => {
    expect(new Set(Object.values(STEPS))).toEqual(new Set(Object.keys(CAUTIONS)))
    for (const [screen, step] of Object.entries(STEPS)) {
      await goToScreen(page, screen)
      const first = page.getByText(WORDS[CAUTIONS[step][0]].text, { exact: true })
      await first.waitFor()
      await page.getByRole('button', { name: 'Read: hide them in this job' }).click()
      await first.waitFor({ state: 'hidden' })
    }
  })

  it('are all in the report with all of them hidden, and each stands there once', async () => {
    const text = await inReport()
    for (const key of new Set(Object.values(CAUTIONS).flat())) expect(text.split(WORDS[key].text)).toHaveLength(2)
  })

  it('are all in it on paper too, and after a reload', async () => {
    await page.getByText('Saved', { exact: true }).waitFor()
    await page.reload()
    await page.emulateMedia({ media: 'print' })
    const section = page.locator('[data-section="cautions"]')
    await section.waitFor()
    const printed = (await section.textContent())!.replaceAll('\u00a0', ' ')
    for (const each of await section.getByRole('listitem').all()) expect(await each.isVisible()).toBe(true)
    for (const key of Object.values(CAUTIONS).flat()) expect(printed).toContain(WORDS[key].text)
    await page.emulateMedia({ media: 'screen' })
  })

  it('are all in it when all sweeps are gone from the line, and when the job is closed', async () => {
    await goToScreen(page, 'Mend')
    await page.getByRole('button', { name: 'Close the job' }).click()
    await page.getByRole('button', { name: 'Open the job again' }).waitFor()
    const closed = await inReport()
    await goToScreen(page, 'Line')
    for (;;) {
      const remove = page.getByRole('button', { name: /^Remove sweep/ })
      if ((await remove.count()) === 0) break
      await remove.first().click()
    }
    const bare = await inReport()
    for (const key of Object.values(CAUTIONS).flat()) {
      expect(closed).toContain(WORDS[key].text)
      expect(bare).toContain(WORDS[key].text)
    }
    expect(opened.troubles).toEqual([])
  })
})
