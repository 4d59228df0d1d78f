import { nearestWord } from '../../../shared/base/nearestWord'
import { shown } from '../../../shared/base/shown'
import { demoFiles } from '../../../shared/synth/demoFiles'
import { drawYard } from '../../../shared/synth/drawYard'
import { FAMILIES, familyNamed } from '../../../shared/synth/families'
import { type NamedFile, renderYard } from '../../../shared/synth/yardFiles'
import type { Args } from '../args'
import { CallError } from '../callError'
import { prepareFolder, writeFile } from '../files'
import { clearProgress, print, showProgress } from '../print'

/** `yardhark synth --out FOLDER`: the demo job, or a test sweep of a family. */
export async function synthCommand({ rest, options }: Args): Promise<void> {
  if (rest.length > 0)
    throw new CallError(`synth writes into --out; leave out ${shown(rest[0])} or put --out before it`)
  if (options.has('list')) return print(FAMILIES.map(({ name }) => `${dashed(name)}\n`).join(''))
  const folder = options.get('out')
  if (folder === undefined) throw new CallError('synth needs the folder to write into; add --out FOLDER')
  const files = filesOf(options.get('family'), options.get('seed'))
  prepareFolder(folder, options.has('force'))
  let written = 0
  for (const { path, bytes } of files) {
    writeFile(folder, path, bytes)
    showProgress(`writing: ${++written} files, ${path}`)
    await untilSignalsWereSeen()
  }
  clearProgress()
}

function filesOf(family: string | undefined, seed: string | undefined): Iterable<NamedFile> {
  if (family === undefined && seed === undefined) return demoFiles()
  const name = family ?? FAMILIES[0]!.name
  const found = familyNamed(name.replaceAll('-', ' ')) ?? familyNamed(name)
  if (found === null) {
    const names = FAMILIES.map((each) => dashed(each.name))
    const near = nearestWord(name, names)
    const mend = near === null ? 'yardhark synth --list names them' : `did you mean ${near}?`
    throw new CallError(`there is no family ${shown(name)}; ${mend}`)
  }
  const yard = drawYard(found, seed ?? '1')
  return renderYard(yard, yard.seed)
}

function dashed(name: string): string {
  return name.replaceAll(' ', '-')
}

/** Making a clip keeps the thread busy; between two of them an interruption must get its turn. */
function untilSignalsWereSeen(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve))
}
