import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { AnswerJson } from '../../shared/answer/answerJson'
import { differencesOf } from './differencesOf'
import {
  axeFindings,
  goToScreen,
  openDemo,
  openYard,
  PATIENT_MS,
  savedAnswer,
  type Yard,
  type YardPage,
} from './yardPage'

let yard: Yard
let opened: YardPage
let page: Page
let folder: string
let plain: AnswerJson
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-detector-'))
  yard = await openYard()
  opened = await yard.open('phone')
  page = opened.page
  page.setDefaultTimeout(PATIENT_MS)
  await openDemo(page)
  plain = await savedAnswer(page)
})
afterAll(async () => {
  await opened.close()
  await yard.close()
  rmSync(folder, { recursive: true })
})

const about = ({ reasons }: AnswerJson) => reasons.filter(({ key }) => key.startsWith('reason_detector'))
const status = () => page.getByRole('status').filter({ hasText: /install/ })

describe('a detector in the page', () => {
  it('refuses what is none, in words, and installs nothing of it', async () => {
    await goToScreen(page, 'Practice')
    for (const [name, text, words] of [
      ['notes.json', 'not JSON', /^notes\.json is no detector that can be used/],
      ['newer.json', '{"format":"yardhark detector","version":99}', /version: is 99/],
      ['huge.json', ' '.repeat(5_100_000), /^huge\.json is too big/],
    ] as const) {
      writeFileSync(join(folder, name), text)
      await page.locator('[data-picker="detector"]').setInputFiles(join(folder, name))
      await page.getByText(words).waitFor()
      expect(await status().textContent()).toMatch(/^None is installed/)
    }
  })

  it('is taken along with the page, tells what it learnt from, and is asked about the place', async () => {
    await page.getByRole('button', { name: 'Install the starting detector' }).click()
    await page.getByText('Starting model is installed').waitFor()
    await page.getByText('What it learnt from, and what it is worth').click()
    await page
      .getByText(/No real leak was in it/)
      .first()
      .waitFor()
    expect(await axeFindings(page)).toEqual([])
    await goToScreen(page, 'Place')
    await page.getByText('A detector was asked as well: Starting model.').waitFor()
    const withIt = await savedAnswer(page)
    expect(about(withIt).length).toBeGreaterThan(0)
    expect(withIt.verdict).toBe('located')
    await page.getByText(/^The detector speaks/).waitFor()
  })

  it('is still there after a reload', async () => {
    await page.reload()
    await page.getByText('A detector was asked as well: Starting model.').waitFor()
  })

  it('leaves the place as it was once it is removed', async () => {
    await goToScreen(page, 'Practice')
    await page.getByRole('button', { name: 'Remove it' }).click()
    await page.getByText(/^None is installed/).waitFor()
    await goToScreen(page, 'Place')
    await page.getByText(/^A detector was asked/).waitFor({ state: 'detached' })
    expect(differencesOf(plain, await savedAnswer(page), 1e-9)).toEqual([])
    expect(opened.troubles).toEqual([])
  })
})
