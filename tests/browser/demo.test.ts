import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { close } from '../support/close'
import { differencesOf } from './differencesOf'
import { longestTask } from './longestTask'
import {
  axeFindings,
  goToScreen,
  openDemo,
  openYard,
  PATIENT_MS,
  root,
  type ScreenSize,
  savedAnswer,
  type Yard,
  type YardPage,
} from './yardPage'

/** Where the demo's elbow is cracked: demo-audio/README.md. */
const TRUE_PLACE_M = 6.35

let yard: Yard
beforeAll(async () => {
  yard = await openYard()
})
afterAll(() => yard.close())

describe.each(['phone', 'desk'] as const)('the invented job on a %s', (size: ScreenSize) => {
  let opened: YardPage
  let page: Page
  beforeAll(async () => {
    opened = await yard.open(size)
    page = opened.page
    const { ownMs, wallMs } = await longestTask(yard.browser, page, () => openDemo(page))
    console.log(
      `${size}: while the job was opened and worked out, the longest task of the main thread took ${Math.round(ownMs)} ms ` +
        `of its own (${Math.round(wallMs)} ms on the wall, with all else that this machine did)`,
    )
  })
  afterAll(() => opened.close())

  it('is located, in a window that holds the true place, with its points ranked', async () => {
    const answer = await savedAnswer(page)
    expect(answer.verdict).toBe('located')
    expect(answer.confirmed).toBe(false)
    const [from, to] = answer.sources[0]!.window_m
    expect(from).toBeLessThanOrEqual(TRUE_PLACE_M)
    expect(to).toBeGreaterThanOrEqual(TRUE_PLACE_M)
    expect(await page.getByText('Not confirmed by ear.').isVisible()).toBe(true)
    const ranked = page.getByRole('region', { name: 'Points, the likeliest first' })
    expect(await ranked.getByRole('button').first().textContent()).toMatch(/^Point 7(?!\d)|^Point 77$/)
  })

  it('gives the same answer as the command line', async () => {
    const differences = differencesOf(toldByCommand(), await savedAnswer(page), 1e-9)
    expect(differences).toEqual([])
  })

  it('lets the place follow the length of a leg, and takes it back', async () => {
    await goToScreen(page, 'Line')
    const glance = page.getByRole('link', { name: 'See the place' })
    const before = await glance.textContent()
    await page.getByLabel('Length of leg 1').fill('5.35')
    await expect.poll(() => glance.textContent(), { timeout: PATIENT_MS }).not.toBe(before)
    await page.getByLabel('Length of leg 1').press('Tab')
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => glance.textContent(), { timeout: PATIENT_MS }).toBe(before)
    expect(await page.getByLabel('Length of leg 1').inputValue()).toBe('6.35')
    await page.getByRole('button', { name: 'Redo' }).click()
    expect(await page.getByLabel('Length of leg 1').inputValue()).toBe('5.35')
    await page.getByRole('button', { name: 'Undo' }).click()
  })

  it('says at the field what cannot be meant, and keeps what was there', async () => {
    const field = page.getByLabel('Length of leg 2')
    await field.fill('four')
    expect(await page.getByText('This is no number; write one like 3.5.').isVisible()).toBe(true)
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
    await field.fill('4.05')
    await field.press('Tab')
    expect(await page.getByText('This is no number; write one like 3.5.').isVisible()).toBe(false)
  })

  it('shows feet to whoever reads in feet', async () => {
    await goToScreen(page, 'Jobs')
    await page.getByRole('radio', { name: 'Feet' }).check()
    await goToScreen(page, 'Line')
    close(Number(await page.getByLabel('Length of leg 1').inputValue()), TRUE_PLACE_M / 0.3048, {
      abs: 0.005,
      because: 'two figures after the point are shown; 1 ft = 0.3048 m',
    })
    expect(await page.getByRole('link', { name: 'See the place' }).textContent()).toMatch(/\d\s(?:ft|in)\b/)
    await goToScreen(page, 'Jobs')
    await page.getByRole('radio', { name: 'Metres' }).check()
  })

  it('is found again after a reload', async () => {
    await goToScreen(page, 'Line')
    await page.getByLabel('Name of the line').fill('Return line')
    await page.getByText('Saved', { exact: true }).waitFor()
    await goToScreen(page, 'Place')
    const before = await savedAnswer(page)
    await page.reload()
    await page.getByRole('heading', { name: 'Located' }).waitFor()
    expect(differencesOf(before, await savedAnswer(page), 1e-9)).toEqual([])
    await goToScreen(page, 'Line')
    expect(await page.getByLabel('Name of the line').inputValue()).toBe('Return line')
    await goToScreen(page, 'Jobs')
    expect(await page.getByRole('link', { name: /Alder Square/ }).isVisible()).toBe(true)
  })

  it.each(['Jobs', 'Line', 'Place', 'Help'])(
    'has nothing that an accessibility checker finds on the screen %s, light or dark',
    async (screen) => {
      await goToScreen(page, screen)
      await page.getByRole('heading', { level: 1 }).waitFor()
      if (screen === 'Place') await page.getByText('What the sketch shows').click()
      expect(await axeFindings(page)).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await axeFindings(page, { onlyContrast: true })).toEqual([])
      await page.emulateMedia({ colorScheme: 'light' })
    },
  )

  it('asks before a job is deleted, in words and colours that an accessibility checker finds nothing about', async () => {
    await goToScreen(page, 'Jobs')
    await page.getByRole('button', { name: /^Delete Alder Square/ }).click()
    expect(await axeFindings(page, { within: '.job-list' })).toEqual([])
    await page.getByRole('button', { name: 'Keep' }).click()
    expect(await page.getByRole('link', { name: /Alder Square/ }).isVisible()).toBe(true)
  })

  it('brings no error to the console and asks nobody else for anything', () => {
    expect(opened.troubles).toEqual([])
  })
})

describe('the first load', () => {
  it('is at most 150 kB of script, packed', () => {
    // The budget of the project's own plan; every script that the page names before a job is opened.
    const html = readFileSync(resolve(root, 'dist/app/index.html'), 'utf8')
    const scripts = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, path]) => path!)
    expect(scripts.length).toBeGreaterThan(0)
    const bytes = scripts.reduce((sum, path) => sum + packedBytes(resolve(root, 'dist/app', path)), 0)
    console.log(`first load: ${(bytes / 1000).toFixed(1)} kB of script, gzip`)
    expect(bytes).toBeLessThanOrEqual(150_000)
  })
})

let told: unknown
/** What the command line says of the same job; asked once. */
function toldByCommand(): unknown {
  const command = [resolve(root, 'dist/cli/yardhark.js'), 'locate', resolve(root, 'demo-audio'), '--json']
  told ??= JSON.parse(execFileSync(process.execPath, command, { encoding: 'utf8' }))
  return told
}

function packedBytes(path: string): number {
  return gzipSync(readFileSync(path), { level: 9 }).length
}
