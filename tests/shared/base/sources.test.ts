import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, it } from 'vitest'
import { SOURCES } from '../../../shared/base/sources'

const root = resolve(import.meta.dirname, '../../..')
const cited = ['shared', 'tests'].flatMap((top) =>
  readdirSync(join(root, top), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|md)$/.test(name) && !name.endsWith('sources.ts'))
    .flatMap((name) =>
      [
        ...readFileSync(join(root, top, name), 'utf8').matchAll(/\[([A-Za-z]{2,}\d{2,6}|CremerHeckl|CRCWater)\]/g),
      ].map(([, key]) => ({ key: key!, file: `${top}/${name}` })),
    ),
)

it('has every reference that is cited by key', () => {
  expect(cited.filter(({ key }) => !(key in SOURCES)).map(({ key, file }) => `${key} in ${file}`)).toEqual([])
})

it('keeps no reference that nobody cites', () => {
  const used = new Set(cited.map(({ key }) => key))
  expect(Object.keys(SOURCES).filter((key) => !used.has(key))).toEqual([])
})
