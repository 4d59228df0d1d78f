// Pictures of every screen in every size, light and dark, for eyes. Written into a folder outside the repository.
import { mkdirSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { goToScreen, openDemo, openYard, SCREENS, type ScreenSize } from './yardPage'

const folder = process.env.SCREENSHOTS ?? join(tmpdir(), 'yardhark-screens')
mkdirSync(folder, { recursive: true })
const only = process.argv.slice(2)
const yard = await openYard()

for (const size of Object.keys(SCREENS) as ScreenSize[]) {
  for (const colorScheme of ['light', 'dark'] as const) {
    const name = `${size}-${colorScheme}`
    if (only.length > 0 && !only.some((wanted) => name.startsWith(wanted))) continue
    const { page, troubles, close } = await yard.open(size, { colorScheme })
    await shoot(page, name)
    for (const trouble of troubles) console.log(`${name}: ${trouble}`)
    await close()
  }
}
await yard.close()
console.log(`Pictures are in ${folder}`)

async function shoot(page: Page, name: string): Promise<void> {
  const take = async (screen: string, fullPage = true) => {
    await page.waitForTimeout(150)
    await page.screenshot({ path: join(folder, `${screen}-${name}.png`), fullPage })
  }
  await page.getByRole('button', { name: 'Look at the invented job' }).waitFor()
  await take('jobs-empty')
  await openDemo(page)
  await page.locator('.sketch-closer').waitFor()
  await take('place-top', false)
  await take('place')
  await page
    .getByRole('button', { name: /^Point 7\b/ })
    .first()
    .click()
  await page.locator('.point-charts').waitFor()
  await page
    .getByText(/^Working out the spect/)
    .last()
    .waitFor({ state: 'hidden' })
  await page.getByText('Tap it to go there.').waitFor()
  await take('place-point')
  await goToScreen(page, 'Line')
  await take('line-top', false)
  await take('line')
  await goToScreen(page, 'Help')
  await take('help')
  await goToScreen(page, 'Jobs')
  await take('jobs')
}
