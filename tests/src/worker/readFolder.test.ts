import { readdirSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readSweepFolder } from '../../../src/cli/readSweepFolder'
import { readFolder } from '../../../src/worker/readFolder'

const demo = resolve(import.meta.dirname, '../../../demo-audio')
const text = (words: string) => new TextEncoder().encode(words).buffer as ArrayBuffer
const file = (name: string) => text(readFileSync(resolve(demo, name), 'utf8'))
const NOTHING = { folder: 'walk', sheet: null, line: null, layout: null }

describe('a sweep folder in the page', () => {
  it('is read as the command line reads it', () => {
    const paths = readdirSync(demo)
    const read = readFolder({ folder: 'demo', paths, sheet: file('sweep.csv'), line: file('line.json'), layout: null })
    const told = readSweepFolder(demo, { startM: null, spacingM: null })
    expect(read.rows).toEqual(told.rows)
    expect(read.line).toEqual(told.line)
    expect([...read.sheetProblems, ...read.lineProblems]).toEqual(told.problems)
    expect(read.needsLayout).toBe(false)
  })

  it('without a sheet asks how far apart the points are, and then knows', () => {
    const paths = ['3-on.wav', '1-on.wav', '1-off.flac', 'sub/9.wav', 'notes.txt', 'talk.wav']
    const first = readFolder({ ...NOTHING, paths })
    expect(first.needsLayout).toBe(true)
    expect(first.rows.map(({ point, file }) => [point, file])).toEqual([
      [1, '1-on.wav'],
      [1, '1-off.flac'],
      [3, '3-on.wav'],
    ])
    expect(first.sheetProblems).toEqual([{ key: 'name_not_numbered', severity: 'note', values: { file: 'talk.wav' } }])
    const told = readFolder({ ...NOTHING, paths, layout: { startM: 2, spacingM: 1.5 } })
    expect(told.needsLayout).toBe(false)
    expect(told.rows.map(({ alongM }) => alongM)).toEqual([2, 2, 5])
    expect(told.line).toBeNull()
  })

  it.each([
    ['no clip', { ...NOTHING, paths: ['a.txt'] }, 'walk: holds no clip whose name tells its point'],
    ['two files for one clip', { ...NOTHING, paths: ['6.flac', '6.wav'] }, '6.wav: has the same number as 6.flac'],
    [
      'a sheet whose clips are elsewhere',
      { ...NOTHING, paths: ['a.wav'], sheet: text('point,along_m,file\n1,0,b.wav\n') },
      'sweep.csv: the clip it names is not there; copy the clips beside it',
    ],
    [
      'a line that cannot be',
      { ...NOTHING, paths: ['1.wav'], line: text('{"length_m": -2}'), layout: { startM: 0, spacingM: 1 } },
      'line.json, length_m: is -2',
    ],
  ])('with %s is refused in words', (_, folder, message) => {
    expect(() => readFolder(folder)).toThrow(message)
  })
})
