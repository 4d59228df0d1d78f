import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { judgedSweep } from './judgedSweep'
import { familyRows, placeTable } from './placeTable'
import { tableNotes, withTable } from './readmeTable'

const readme = readFileSync(resolve(import.meta.dirname, '../../../README.md'), 'utf8')

it("puts the table between the README's marks and touches nothing else, as often as one likes", () => {
  const once = withTable(readme, 'a table')!
  expect(once).toContain('\na table\n')
  expect(withTable(once, 'a table')).toBe(once)
  const [before, after] = once.split('a table')
  expect(readme.startsWith(before!.trimEnd())).toBe(true)
  expect(readme.endsWith(after!.trimStart())).toBe(true)
})

it('finds no place in a text without marks', () => {
  expect(withTable('no marks', 'a table')).toBeNull()
})

it('has a row a family and one for the pool, every row with the same columns', () => {
  const sweeps = [judgedSweep(), judgedSweep({ family: 'slab' }), judgedSweep({ family: 'two leaks' })]
  const rows = placeTable(familyRows(sweeps)).split('\n')
  expect(rows.slice(2).map((row) => row.split('|')[1]!.trim())).toEqual(['plain', 'slab', 'two leaks', '**pooled**'])
  expect(new Set(rows.map((row) => row.split('|').length)).size).toBe(1)
})

it('says beneath it where the figures come from and that the yard is synthetic', () => {
  const notes = tableNotes({ sweeps: 1340, seeds: 'judge-1 to judge-60', perFamily: 60 })
  for (const said of ['1340 sweeps', 'judge-1 to judge-60', 'synthetic', 'no recording']) expect(notes).toContain(said)
})
