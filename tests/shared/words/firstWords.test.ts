import { existsSync, readFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { expect, it } from 'vitest'
import { LATER_WORDS } from '../../../shared/words/laterWords'

const root = resolve(import.meta.dirname, '../../..')

it('are all that the first load of the page says: no file of it names a word that comes later', () => {
  const files = [...firstLoad(resolve(root, 'src/app/main.tsx'))]
  expect(files.length).toBeGreaterThan(100)
  const early = files.flatMap((file) =>
    [...readFileSync(file, 'utf8').matchAll(/(['"`])(\w+)\1/g)]
      .map(([, , key]) => key!)
      .filter((key) => Object.hasOwn(LATER_WORDS, key))
      .map((key) => `${file.slice(root.length + 1)}: ${key}`),
  )
  expect(early.join('\n')).toBe('')
})

/** The file and all that it imports by a statement; what is fetched by a call, and types, come later or never. */
function firstLoad(file: string, found = new Set<string>()): Set<string> {
  if (found.has(file)) return found
  found.add(file)
  const imports = readFileSync(file, 'utf8').matchAll(/^(?:import|export)(?! type)[^']*?from '(\.[^']+)'$/gm)
  for (const [, path] of imports) {
    const base = resolve(dirname(file), path!)
    const target = [base, `${base}.ts`, `${base}.tsx`].find((each) => /\.tsx?$/.test(each) && existsSync(each))
    if (target !== undefined) firstLoad(target, found)
  }
  return found
}
