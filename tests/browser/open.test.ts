import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFindings, openDemo, openYard, PATIENT_MS, type ScreenSize, type Yard, type YardPage } from './yardPage'

let yard: Yard
beforeAll(async () => {
  yard = await openYard()
})
afterAll(() => yard.close())

describe.each<ScreenSize>(['phone', 'desk'])('where to open, on a %s', (size) => {
  let opened: YardPage
  let page: Page
  const shoot = async (name: string) => {
    const folder = process.env.SCREENSHOTS
    if (folder) await page.screenshot({ path: `${folder}/${name}-${size}.png`, fullPage: true })
  }
  beforeAll(async () => {
    opened = await yard.open(size)
    page = opened.page
    page.setDefaultTimeout(PATIENT_MS)
    await openDemo(page)
    await page.getByRole('heading', { name: 'Where to open' }).waitFor()
  })
  afterAll(() => opened.close())

  it('costs and times follow what is typed there, and so does what going round would save', async () => {
    await page.getByLabel('Cost a metre: pavers').fill('100')
    await page.getByLabel('Minutes a metre: pavers').fill('60')
    const table = page.getByRole('table', { name: /^The window, piece by piece/ })
    const cost = Number(await table.locator('tbody tr').first().locator('td').nth(2).textContent())
    expect(cost).toBeGreaterThan(10)
    await page.getByText(/^Opening it is expected to cost .* It is expected to take \d+.min\.$/).waitFor()
    await page.getByText('A way round instead').click()
    await page.getByLabel('Length of the way round').fill('9')
    await page.getByLabel('Cost a metre of the way round').fill('40')
    await page.getByText(/^Going round costs 360, which is .* more than opening is expected to cost\.$/).waitFor()
  })

  it('the hole is taped from two fixed marks, and how sure that is is said', async () => {
    await page.getByText('Dig sketch', { exact: true }).last().click()
    await page.getByRole('button', { name: 'Put mark A' }).click()
    await page.getByRole('button', { name: 'Put mark B' }).click()
    expect(await page.getByText(/^Put by hand/).count()).toBe(2)
    await page.getByLabel('What mark A is').fill('A, corner of the pump house')
    const mark = (name: string) => page.getByRole('group', { name: `Mark ${name}` })
    const tape = async (name: string, from: string, to: string, [first, second]: readonly [string, string]) => {
      await mark(name).getByLabel('First tape from').selectOption(from)
      await mark(name).getByLabel('Second tape from').selectOption(to)
      await mark(name)
        .getByLabel(/^Tape from/)
        .first()
        .fill(first)
      await mark(name)
        .getByLabel(/^Tape from/)
        .last()
        .fill(second)
    }
    await tape('A', 'point 1', 'point 5', ['1', '1'])
    await mark('A')
      .getByText(/^The tapes end .* from each other/)
      .waitFor()
    await tape('A', 'point 1', 'point 5', ['3.2', '3.4'])
    await tape('B', 'point 5', 'point 9', ['3.6', '3.0'])
    await mark('A').getByText('Known by two tapes from the line.').waitFor()
    await mark('B').getByText('Known by two tapes from the line.').waitFor()
    const tapes = page.getByRole('table', { name: 'Tapes to the hole' })
    expect(await tapes.locator('tbody tr').count()).toBe(3)
    const before = await tapes.textContent()
    await mark('B').getByRole('button', { name: 'It is on the other side' }).click()
    await expect.poll(() => tapes.textContent()).not.toBe(before)
    await shoot('open')
    expect(await axeFindings(page)).toEqual([])
    expect(opened.troubles).toEqual([])
  })
})
