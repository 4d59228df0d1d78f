import { execFileSync } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { FormatError } from '../../../shared/base/errors'
import { CallError } from '../../../src/cli/callError'
import { readSweepFolder, type ToldLayout } from '../../../src/cli/readSweepFolder'
import { folderWith, noiseClip } from '../../support/runCli'

const CLIP = noiseClip(0.1)
const CLIPS = { '1.wav': CLIP, '2.wav': CLIP, '3.wav': CLIP }
const HEADER = 'point,along_m,file'
const SHEET = `${HEADER}\n1,0,1.wav\n2,1,2.wav\n3,2,3.wav\n`
const NOTHING_TOLD = { startM: null, spacingM: null }

const refusal = (folder: string, layout: ToldLayout = NOTHING_TOLD): string => {
  try {
    readSweepFolder(folder, layout)
  } catch (error) {
    if (error instanceof CallError || error instanceof FormatError) return error.message
    throw error
  }
  return 'no error'
}

describe('a sweep folder', () => {
  it('tells its points by its sheet, and its line by its line file', () => {
    const folder = folderWith({ ...CLIPS, 'Sweep.csv': SHEET, 'line.json': '{"length_m": 3}' })
    const { rows, line, problems } = readSweepFolder(folder, NOTHING_TOLD)
    expect(rows.map(({ point, alongM, file }) => [point, alongM, file])).toEqual([
      [1, 0, '1.wav'],
      [2, 1, '2.wav'],
      [3, 2, '3.wav'],
    ])
    expect(line.lengthM).toBe(3)
    expect(problems).toEqual([])
  })

  it('tells its points by the numbers of its clips when it has no sheet', () => {
    const folder = folderWith({
      '03-on.wav': CLIP,
      '4.WAV': CLIP,
      '06.wav': CLIP,
      'spring.wav': CLIP,
      'notes.txt': 'x',
    })
    const { rows, problems } = readSweepFolder(folder, { startM: -2, spacingM: 1.5 })
    expect(rows.map(({ point, alongM }) => [point, alongM])).toEqual([
      [3, -2],
      [4, -0.5],
      [6, 2.5],
    ])
    expect(problems.map(({ key, values }) => [key, values.file])).toEqual([['name_not_numbered', 'spring.wav']])
  })

  it('does not use a spacing beside a sheet, and says so', () => {
    const folder = folderWith({ ...CLIPS, 'sweep.csv': SHEET })
    const { rows, problems } = readSweepFolder(folder, { startM: null, spacingM: 9 })
    expect(rows[2]!.alongM).toBe(2)
    expect(problems.map(({ key }) => key)).toEqual(['layout_not_used'])
  })
})

describe('a wrong folder is refused with the file, the row and the mend', () => {
  it('no folder, a file, no clip, no spacing', () => {
    expect(refusal('/no/such/folder')).toBe('/no/such/folder: there is no such folder; check the name')
    const clips = folderWith(CLIPS)
    expect(refusal(join(clips, '1.wav'))).toBe(`${clips}/1.wav: is no folder; for single clips use yardhark inspect`)
    expect(refusal(clips)).toBe(
      `${clips}: has no sweep.csv; say how far apart the points are with --spacing or --spacing-ft`,
    )
    const empty = folderWith({})
    expect(refusal(empty)).toBe(`${empty}: holds no clip; name clips like 6.wav or 6-on.wav, or write a sweep.csv`)
    const unnamed = folderWith({ 'a.wav': CLIP })
    expect(refusal(unnamed, { startM: 0, spacingM: 1 })).toContain('holds no clip whose name tells its point')
  })

  it('a sheet whose clips are all somewhere else', () => {
    const folder = folderWith({ 'sweep.csv': SHEET })
    expect(refusal(folder)).toBe(
      `${folder}/sweep.csv: none of the 3 clips it names is in the folder; copy the clips there or correct the file column`,
    )
  })

  it.each([
    ['text for a number', `${HEADER}\n1,near,1.wav\n`, 'row 2, along_m: is "near"; write a number, like 3.5'],
    [
      'a row twice',
      `${SHEET}1,0,3.wav\n`,
      'row 5: is point 1, take 1, air on again, as row 2; give each take its own number in a take column',
    ],
    [
      'a path out of the folder',
      `${HEADER}\n1,0,../1.wav\n`,
      'row 2, file: "../1.wav" leaves the folder with ".."; put the clip into the folder',
    ],
    [
      'Latin-1',
      Buffer.from(`${HEADER},note\n1,0,1.wav,caf\u00e9\n`, 'latin1'),
      'row 2: the byte E9 is not UTF-8; save the file again as UTF-8',
    ],
  ])('a sheet with %s', (_, sheet, message) => {
    const folder = folderWith({ ...CLIPS, 'sweep.csv': sheet })
    expect(refusal(folder)).toBe(`${folder}/sweep.csv, ${message}`)
  })

  it.each([
    ['text for a number', '{"depth_m": "0,4"}', 'depth_m: is the text "0,4"; write a number without quotes, like 3.5'],
    ['no JSON', '{\n"depth_m": 0.4,\n}', 'line 3: a key in double quotes is expected, not "}"'],
  ])('a line with %s', (_, line, message) => {
    const folder = folderWith({ ...CLIPS, 'sweep.csv': SHEET, 'line.json': line })
    expect(refusal(folder)).toBe(`${folder}/line.json, ${message}`)
  })

  it('a sheet or line that is a pipe or a folder does not keep it waiting', () => {
    const folder = folderWith(CLIPS)
    execFileSync('mkfifo', [join(folder, 'sweep.csv')])
    expect(refusal(folder)).toBe(`${folder}/sweep.csv: is no file with text in it; put a plain file there`)
    const other = folderWith({ ...CLIPS, 'sweep.csv': SHEET })
    mkdirSync(join(other, 'line.json'))
    expect(refusal(other)).toBe(`${other}/line.json: is no file with text in it; put a plain file there`)
  })
})
