import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readOpinionFile } from '../../shared/opinion/opinionFile'
import { axeFindings, goToScreen, openDemo, openYard, PATIENT_MS, type Yard, type YardPage } from './yardPage'

let yard: Yard
let phone: YardPage
let desk: YardPage
let folder: string
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'yardhark-ear-'))
  yard = await openYard()
  phone = await yard.open('phone', {}, async (context) => {
    // A share sheet that takes everything, and remembers it.
    await context.addInitScript(() => {
      const shared: { name: string; bytes: number }[] = []
      Object.assign(window, { shared })
      navigator.canShare = () => true
      navigator.share = async ({ files = [] } = {}) =>
        void shared.push(...files.map(({ name, size }) => ({ name, bytes: size })))
    })
  })
  desk = await yard.open('desk')
  for (const { page } of [phone, desk]) page.setDefaultTimeout(PATIENT_MS)
})
afterAll(async () => {
  await phone.close()
  await desk.close()
  await yard.close()
  rmSync(folder, { recursive: true })
})

const ear = (page: Page) => goToScreen(page, page === phone.page ? '2nd ear' : 'Second ear')
const jobFile = () => join(folder, 'job.zip')
const opinions = () => join(folder, 'opinions.json')

async function saved(page: Page, button: string, path: string): Promise<void> {
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: button }).click()
  await (await download).saveAs(path)
}

/** What an entry of the list of opinions says of place and blindness: the same wherever it is shown. */
async function listed(page: Page): Promise<string[]> {
  const entries = page.locator('.ears-entry')
  await entries.filter({ hasText: /Machine/ }).waitFor() // it may still be at work
  return entries.evaluateAll((all) =>
    all.map((entry) =>
      [...entry.querySelectorAll('h3, p')]
        .slice(0, 2)
        .map(({ textContent }) => textContent)
        .join(': '),
    ),
  )
}

/** As somebody with a keyboard sets a slider. */
async function slide(page: Page, name: string, value: number): Promise<void> {
  await page.getByRole('slider', { name, exact: true }).fill(String(value))
}

describe('a second ear', () => {
  it('gets the job as a file that the phone shares, its size said first', async () => {
    const { page } = phone
    await openDemo(page)
    await ear(page)
    await page.getByRole('heading', { name: 'What all ears say' }).waitFor()
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Pack the job file' }).click()
    const words = await page.getByText(/is ready: .*\sMB\./).textContent()
    const [, name, size] = /^(\S+) is ready: (\S+)\sMB/.exec(words ?? '')!
    await page.getByRole('button', { name: 'Share it' }).click()
    await expect
      .poll(() => page.evaluate(() => (window as unknown as { shared: unknown[] }).shared))
      .toEqual([{ name, bytes: expect.any(Number) }])
    await saved(page, 'Save the job file', jobFile())
    expect(readFileSync(jobFile()).length / 1e6).toBeCloseTo(Number(size), 1)
  })

  it('hears it blind: no screen tells the answer, no machine finding stands beside a clip', async () => {
    const { page } = desk
    await page.locator('[data-picker="files"]').first().setInputFiles(jobFile())
    await page.getByRole('heading', { name: 'Listen first' }).waitFor()
    await page.getByText('Alder Square, invented').first().waitFor()
    for (const screen of ['Line', 'Pressure', 'Place', 'Mend', 'Report', 'Listen']) {
      await goToScreen(page, screen)
      await page.getByText('This job came from somebody else').waitFor()
      expect(await page.getByText(/Located|likeliest|rings a second/).count()).toBe(0)
    }
    await page.getByRole('main').getByRole('button', { name: 'Listen first' }).click()
    await page.getByRole('button', { name: 'Point 6, not marked yet' }).waitFor()
    for (const words of ['ring', 'Ring', 'stands out of the floor']) {
      expect(await page.getByRole('main').getByText(words, { exact: false }).filter({ visible: true }).count()).toBe(0)
    }
    expect(await axeFindings(page)).toEqual([])
  })

  it('goes from point to point by keyboard, plays, loops and marks, and finds it all again after a reload', async () => {
    const { page } = desk
    await page.locator('#content').focus()
    await page.keyboard.press('n')
    await page.getByRole('heading', { name: 'Point 2' }).waitFor()
    await page.keyboard.press('b')
    await page.getByRole('heading', { name: 'Point 1', exact: true }).waitFor()
    for (let i = 0; i < 5; i++) await page.keyboard.press('n')
    await page.getByRole('heading', { name: 'Point 6' }).waitFor()
    for (let i = 0; i < 3; i++) await page.keyboard.press('m')
    await page.getByRole('button', { name: 'Point 6, Heard' }).waitFor()
    await page.locator('.spectrum-canvas').waitFor()
    await page.keyboard.press('l')
    await page.getByRole('checkbox', { name: 'Loop a stretch', checked: true }).waitFor()
    await page.keyboard.press(' ')
    await page.getByRole('button', { name: 'Pause' }).waitFor()
    await page.waitForTimeout(2500) // a clip counts as heard once it has sounded for a second
    await page.keyboard.press(' ')
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor()
    await page.getByLabel('On this moment of the clip').fill('gurgles <b>here</b>')
    await page.getByRole('button', { name: 'Add the remark' }).click()
    await page.getByText('gurgles <b>here</b>').waitFor()
    await page.reload()
    await page.getByRole('button', { name: 'Point 6, Heard' }).waitFor()
    await page.getByText('Your remarks: 1.').waitFor()
    await page.getByRole('heading', { name: 'Listen first' }).waitFor()
  })

  it('commits a place with a window, and only then sees what the machine says', async () => {
    const { page } = desk
    await page.getByRole('button', { name: 'Commit the opinion', disabled: true }).waitFor()
    await slide(page, 'Along the line', 5.1)
    await slide(page, 'Give or take', 0.6)
    await page.getByText('Say first how sure you are.').waitFor()
    await page.getByRole('radio', { name: /^80\s%$/ }).press('Space')
    await page.getByRole('button', { name: 'Point 3, not marked yet' }).click()
    await page.getByRole('checkbox', { name: 'I would record this point again' }).check()
    await page.getByLabel('Why').fill('a mower')
    await page.getByLabel('Who listens').fill('Office')
    await page.getByRole('button', { name: 'Commit the opinion', disabled: false }).click()
    await page.getByRole('heading', { name: 'What all ears say' }).waitFor()
    await page.getByText('Formed blind.', { exact: false }).waitFor()
    await page.getByText('Given on this device', { exact: false }).waitFor()
    await page.getByText('Clips played: 1.', { exact: false }).waitFor()
    const [office, machine, ...more] = await listed(page)
    expect(office).toMatch(/^A Office: At 5\.10\sm, between 4\.50\sm and 5\.70\sm with 80\s%\.$/)
    expect(machine).toMatch(/^B Machine: At/)
    expect(more).toEqual([])
    await page.getByText('Of 1 pairs', { exact: false }).waitFor()
    expect(await axeFindings(page)).toEqual([])
    await goToScreen(page, 'Place')
    await page.getByRole('heading', { name: 'Located' }).waitFor()
    await ear(page)
    await saved(page, 'Save the opinions', opinions())
    const file = readOpinionFile(readFileSync(opinions(), 'utf8'), 'opinions.json')
    expect(file.opinions).toHaveLength(1)
    expect(file.opinions[0]!.seen).toEqual({
      answer: false,
      opinions: false,
      shuffled: false,
      heard: [expect.stringMatching(/^[0-9a-f]{64}$/)],
    })
    expect(file.opinions[0]!.comments).toEqual([
      { clip: file.opinions[0]!.seen.heard[0], atS: expect.any(Number), text: 'gurgles <b>here</b>' },
    ])
  })

  it('comes back to the phone: both show the same, from a device not known there, and once more changes nothing', async () => {
    const { page } = phone
    const bring = () => page.locator('[data-picker="back"]').setInputFiles(opinions())
    await bring()
    await page.getByText('joined Alder Square, invented: opinions 1, clips 0').waitFor()
    await page.getByText('signed on a device not known here', { exact: false }).waitFor()
    expect(await listed(page)).toEqual(await listed(desk.page))
    expect((await listed(page))[0]).toMatch(/^A Office/)
    await page.getByRole('button', { name: 'I know it: Office' }).click()
    await page.getByText('the device you know as Office', { exact: false }).waitFor()
    const before = await listed(page)
    await bring()
    await page.getByText('held nothing new').waitFor()
    expect(await listed(page)).toEqual(before)
    expect(await axeFindings(page)).toEqual([])
    await goToScreen(page, 'Listen')
    await page.getByRole('button', { name: 'On to the points' }).click()
    await page.getByText('Point 3, by Office: a mower.').waitFor()
    await page.getByRole('button', { name: 'Go to point 3' }).waitFor()
  })

  it('whole copies of the job join as well, and bring nothing twice', async () => {
    const { page } = desk
    await page.getByRole('button', { name: 'Pack the job file' }).click()
    await saved(page, 'Save the job file', jobFile())
    await ear(phone.page)
    await phone.page.locator('[data-picker="back"]').setInputFiles(jobFile())
    await phone.page
      .getByText(/^Alder-Square-invented.*|job\.zip held nothing new/)
      .last()
      .waitFor()
    expect(await listed(phone.page)).toEqual(await listed(page))
  })

  it('several files at once: the job, smaller as FLAC, and opinions of it, and the list is worked by keyboard', async () => {
    await phone.page.getByRole('checkbox', { name: 'Smaller, as FLAC' }).check()
    await phone.page.getByRole('button', { name: 'Pack the job file' }).click()
    const flac = join(folder, 'flac.zip')
    await saved(phone.page, 'Save the job file', flac)
    expect(readFileSync(flac).length).toBeLessThan(0.75 * readFileSync(jobFile()).length)
    const { page, troubles, close } = await yard.open('desk')
    page.setDefaultTimeout(PATIENT_MS)
    await page.locator('[data-picker="files"]').first().setInputFiles([opinions(), flac])
    await page.getByRole('heading', { name: 'Listen first' }).waitFor()
    await page.getByText('opinions.json held nothing new').waitFor() // the job brought them
    expect(await page.getByText('Office').count()).toBe(0)
    await goToScreen(page, 'Jobs')
    await page.getByText('To be heard', { exact: true }).waitFor()
    await page.getByText('Opinions: 1').waitFor()
    await page.getByRole('link', { name: /^Alder Square/ }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Point 1, not marked yet' }).waitFor()
    // Whoever does not want to listen is told what that costs, and it is seen in the opinion.
    await page.getByRole('button', { name: 'Show the answer without listening' }).press('Enter')
    await page.getByRole('button', { name: 'Show it' }).press('Enter')
    await page.getByText('Give an opinion of your own').first().waitFor()
    await page.locator('summary').filter({ hasText: 'Give an opinion of your own' }).press('Enter')
    await page.getByRole('radio', { name: 'I cannot hear it' }).press('Space')
    await page.getByRole('button', { name: 'Commit the opinion', disabled: false }).press('Enter')
    await page.getByText('The answer and other opinions could be seen before.', { exact: false }).waitFor()
    expect(troubles).toEqual([])
    await close()
  })

  it('refuses what was changed on the way, in words, and keeps what is there', async () => {
    const { page } = phone
    const before = await listed(page)
    const file = JSON.parse(readFileSync(opinions(), 'utf8')) as {
      job_id: string
      opinions: { id: string; job_id: string; along_m: number }[]
    }
    const bring = async (name: string, content: string | Buffer) => {
      writeFileSync(join(folder, name), content)
      await page.locator('[data-picker="back"]').setInputFiles(join(folder, name))
    }
    const forged = { ...file, opinions: file.opinions.map((each) => ({ ...each, id: 'forged', along_m: 5.2 })) }
    await bring('forged.json', JSON.stringify(forged))
    await page.getByText('This is not what device', { exact: false }).waitFor()
    await bring(
      'other.json',
      JSON.stringify({
        ...file,
        job_id: 'another',
        opinions: file.opinions.map((each) => ({ ...each, job_id: 'another' })),
      }),
    )
    await page.getByText('holds opinions of a job that is not here', { exact: false }).waitFor()
    await bring('notes.json', '{"a": 1}')
    await page.getByText('this is no file of opinions', { exact: false }).waitFor()
    const zip = readFileSync(jobFile())
    const broken = Buffer.from(zip)
    broken[Math.floor(zip.length / 2)]! ^= 0xff
    await bring('broken.zip', broken)
    await page.getByText(/is damaged or was changed/).waitFor()
    await bring('short.zip', zip.subarray(0, zip.length >> 1))
    await page.getByText('The file breaks off before its end.', { exact: false }).waitFor()
    // What was forged is listed, counts for nothing, and took nothing away.
    const after = await listed(page)
    expect(after).toEqual(expect.arrayContaining(before))
    expect(after.filter((each) => !before.includes(each))).toEqual([expect.stringMatching(/^ Office: At 5\.20/)])
    expect(phone.troubles).toEqual([])
    expect(desk.troubles).toEqual([])
  })
})
