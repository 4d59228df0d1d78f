import type { Locator, Page } from 'playwright-core'

/** The sheet that a line is sketched on. */
export function sheetOf(page: Page): Locator {
  return page.getByRole('group', { name: 'Sheet to sketch the line on' })
}

/** A thumb on the sheet, at shares of its width and height. */
export async function tapSheet(page: Page, x: number, y: number): Promise<void> {
  const sheet = sheetOf(page)
  await sheet.scrollIntoViewIfNeeded()
  const { width, height } = (await sheet.boundingBox())!
  await sheet.tap({ position: { x: x * width, y: y * height } })
}
