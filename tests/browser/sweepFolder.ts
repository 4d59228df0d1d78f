import { execFileSync } from 'node:child_process'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { unzipSync } from 'fflate'
import type { Page } from 'playwright-core'
import type { AnswerJson } from '../../shared/answer/answerJson'
import { root } from './yardPage'

/** Has the page save the sweep folder, unpacks it, and says where it lies. */
export async function savedFolder(page: Page, button: string | RegExp, into: string): Promise<string> {
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: button }).click()
  const files = unzipSync(readFileSync(await (await download).path()))
  const paths = Object.keys(files)
  for (const path of paths) {
    mkdirSync(dirname(join(into, path)), { recursive: true })
    writeFileSync(join(into, path), files[path]!)
  }
  return join(into, paths[0]!.split('/')[0]!)
}

/** What the command line says of a folder. */
export function toldByCommand(folder: string): AnswerJson {
  const command = [resolve(root, 'dist/cli/yardhark.js'), 'locate', folder, '--json']
  return JSON.parse(execFileSync(process.execPath, command, { encoding: 'utf8', maxBuffer: 1e8 })) as AnswerJson
}
