import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, it } from 'vitest'
import { SOURCES } from '../../../shared/base/sources'

const root = resolve(import.meta.dirname, '../../..')
const texts = ['shared', 'src', 'tests'].flatMap((top) =>
  readdirSync(join(root, top), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(tsx?|md)$/.test(name) && !name.endsWith('sources.ts'))
    .map((name) => ({ file: `${top}/${name}`, text: readFileSync(join(root, top, name), 'utf8') })),
)

it('has every reference that is cited by key', () => {
  const missing = texts.flatMap(({ file, text }) =>
    [...text.matchAll(/\[([A-Za-z]{2,}\d{2,6})\]/g)]
      .map(([, key]) => key!)
      .filter((key) => !(key in SOURCES))
      .map((key) => `${key} in ${file}`),
  )
  expect(missing).toEqual([])
})

it('keeps no reference that nobody cites', () => {
  const cited = (key: string) => texts.some(({ text }) => text.includes(`[${key}]`))
  expect(Object.keys(SOURCES).filter((key) => !cited(key))).toEqual([])
})
