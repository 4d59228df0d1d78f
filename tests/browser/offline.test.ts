import { cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { writeServiceWorker } from '../../src/app/offline/offlineCopy.config'
import { axeFindings, goToScreen, openDemo, openYard, PATIENT_MS, root, savedAnswer, type Yard } from './yardPage'

const UNDER = 'some/sub/path/'
const KEPT = /This page and all it needs are kept on this device/
const WITH_WORKER: BrowserContextOptions = { serviceWorkers: 'allow' }
/** No name of this machine: what is opened by it over http is not opened securely. */
const PLAIN_HOST = 'yard.test'

let folder: string
let built: string
let yard: Yard
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-offline-'))
  built = join(folder, UNDER)
  cpSync(resolve(root, 'dist/app'), built, { recursive: true })
  yard = await openYard([`--host-resolver-rules=MAP ${PLAIN_HOST} 127.0.0.1`], { folder, under: UNDER })
})
afterAll(async () => {
  await yard.close()
  rmSync(folder, { recursive: true })
})

describe('a build served under a path of its own', () => {
  it('is kept whole at the second try when a file was missing at the first, and then says so', async () => {
    const { page, close, troubles } = await yard.open('phone', WITH_WORKER, async () => {
      renameSync(join(built, 'demo/06-on.wav'), join(folder, 'away.wav'))
    })
    page.setDefaultTimeout(PATIENT_MS)
    await page.getByText(/not complete yet: demo\/06-on\.wav did not come/).waitFor()
    expect(await axeFindings(page)).toEqual([])
    renameSync(join(folder, 'away.wav'), join(built, 'demo/06-on.wav'))
    await page.getByRole('button', { name: 'Try again' }).click()
    await page.getByText(KEPT).waitFor()
    expect(troubles.filter((each) => !each.includes('404'))).toEqual([])
    await close()
  })

  it('has a manifest whose icons are what it says', () => {
    const manifest = JSON.parse(readFileSync(join(built, 'manifest.webmanifest'), 'utf8'))
    const icons = manifest.icons as { src: string; sizes: string; type: string; purpose: string }[]
    for (const { src, sizes } of icons.filter(({ type }) => type === 'image/png')) {
      const png = readFileSync(join(built, src))
      expect(`${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`).toBe(sizes) // width and height of IHDR, PNG section 11.2.2
    }
    expect(icons.map(({ purpose, sizes }) => `${purpose} ${sizes}`)).toEqual(
      expect.arrayContaining(['any 192x192', 'any 512x512', 'maskable 512x512']),
    )
  })

  it('asks before a newer version is taken, goes on as it is until then, and lets nobody take it in a second tab', async () => {
    const { page, context, close } = await yard.open('desk', WITH_WORKER)
    page.setDefaultTimeout(PATIENT_MS)
    await page.getByText(KEPT).waitFor()
    const before = readFileSync(join(built, 'index.html'), 'utf8')
    writeFileSync(join(built, 'index.html'), before.replace('<div id="app">', '<div id="app" data-version="newer">'))
    await writeServiceWorker(built)
    const isNewer = (on: Page) => on.locator('[data-version=newer]').count()
    await page.reload()
    const ask = page.getByText('A newer version is ready.')
    await ask.waitFor()
    expect(await isNewer(page)).toBe(0)
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Later' }).click()
    expect(await ask.count()).toBe(0)
    await page.reload()
    await ask.waitFor()
    expect(await isNewer(page)).toBe(0)
    const second = await context.newPage()
    await second.goto(yard.url)
    await second.getByText('The jobs are open in another tab').waitFor()
    await second.getByText(KEPT).waitFor()
    expect(await second.getByRole('button', { name: 'Take it now' }).count()).toBe(0)
    await page.getByRole('button', { name: 'Take it now' }).click()
    await page.locator('[data-version=newer]').waitFor({ state: 'attached' })
    await second.getByText('A newer version was taken in another tab.').waitFor()
    await page.getByText(KEPT).waitFor()
    expect(await ask.count()).toBe(0)
    await close()
  })

  it('says in words what cannot be had over a connection that is not secure, and still opens clips', async () => {
    const { page, close } = await yard.open('phone', WITH_WORKER)
    page.setDefaultTimeout(PATIENT_MS)
    await page.goto(yard.url.replace('127.0.0.1', PLAIN_HOST))
    expect(await page.evaluate(() => window.isSecureContext)).toBe(false)
    await page.getByText(/was not opened securely \(https\)/).waitFor()
    expect(await axeFindings(page)).toEqual([])
    await page.locator('[data-picker=files]').setInputFiles(
      [6, 7, 8].map((point) => ({
        name: `${point}.wav`,
        mimeType: 'audio/wav',
        buffer: readFileSync(resolve(root, `demo-audio/0${point}-on.wav`)),
      })),
    )
    await page.getByLabel('From point to point').fill('1')
    await page.getByRole('button', { name: 'Open them so' }).click()
    await page.getByRole('heading', { name: /^(?:Located|Unsure|No leak heard)$/ }).waitFor()
    await close()
  })

  // The last one: the server does not come back.
  it('starts and does the whole job without a signal from the first visit on', async () => {
    const { page, context, close, troubles } = await yard.open('phone', WITH_WORKER)
    page.setDefaultTimeout(PATIENT_MS)
    await page.getByText(KEPT).waitFor()
    await yard.stopServing()
    await context.setOffline(true)
    await openDemo(page)
    expect((await savedAnswer(page)).verdict).toBe('located')
    await page
      .getByRole('button', { name: /^Point 7(?!\d)/ })
      .first()
      .click()
    await page.getByRole('heading', { name: /^Point 7/ }).waitFor()
    await page.locator('.point-panel canvas, canvas').first().waitFor()
    await page.reload()
    await page.getByRole('heading', { name: 'Located' }).waitFor()
    const other = await context.newPage()
    await other.goto(yard.url)
    await other.getByText('Alder Square, invented').first().waitFor({ timeout: PATIENT_MS })
    await other.close()
    await goToScreen(page, 'Help')
    await page.getByRole('heading', { level: 1, name: 'Help' }).waitFor()
    expect(troubles).toEqual([])
    await close()
  })
})
