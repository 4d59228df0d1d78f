import { describe, expect, it } from 'vitest'
import { FormatError, InputError } from '../../../shared/base/errors'
import { rowsFromNames } from '../../../shared/sweep/rowsFromNames'

const LAYOUT = { startM: 0, spacingM: 1.5 }

describe('numbered clips without a sheet', () => {
  it('lie at start plus spacing, a gap in the numbers being a gap in the ground', () => {
    const { rows } = rowsFromNames(['05.wav', '3.wav', '009.WAV'], { startM: 2, spacingM: 1.5 })
    expect(rows.map(({ point, alongM, file }) => [point, alongM, file])).toEqual([
      [3, 2, '3.wav'],
      [5, 5, '05.wav'],
      [9, 11, '009.WAV'],
    ])
  })

  it('say air and take in their names, in any case', () => {
    const { rows } = rowsFromNames(['6-OFF.wav', '6-on.wav', '7-Take2.wav', '7-off-take03.wav'], LAYOUT)
    expect(rows.map(({ point, air, take, sharedTake }) => [point, air, take, sharedTake])).toEqual([
      [6, 'on', 1, false],
      [6, 'off', 1, false],
      [7, 'on', 2, true],
      [7, 'off', 3, true],
    ])
  })

  it('come in the same order whatever order the folder lists them in', () => {
    const names = ['1-on.wav', '1-off.wav', '2.wav', '2-off-take2.wav', '10.wav']
    expect(rowsFromNames([...names].reverse(), LAYOUT)).toEqual(rowsFromNames(names, LAYOUT))
  })

  it('leave other recordings out and list them, and say nothing of what is no recording', () => {
    const names = ['1.wav', '2.mp3', 'x1.wav', '1-on-off.wav', '3-.wav', '-1.wav', '1.5.wav', 'line.json', 'README.md']
    const { rows, problems } = rowsFromNames([...names, '1234567.wav', 'photo.jpg'], LAYOUT)
    expect(rows.map((row) => row.file)).toEqual(['1.wav'])
    expect(problems.map(({ key, values }) => [key, values.file])).toEqual(
      ['-1.wav', '1-on-off.wav', '1.5.wav', '1234567.wav', '2.mp3', '3-.wav', 'x1.wav'].map((file) => [
        'name_not_numbered',
        file,
      ]),
    )
  })

  it('may be none', () => {
    expect(rowsFromNames([], LAYOUT)).toEqual({ rows: [], problems: [] })
  })

  it('are refused when two are the same point, take and air', () => {
    expect(() => rowsFromNames(['6.wav', '06-on.wav'], LAYOUT)).toThrow(
      new FormatError('6.wav', '', 'is point 6, take 1, air on, as 06-on.wav is; name one of them 6-on-take2.wav'),
    )
    expect(() => rowsFromNames(['6-off.wav', '6-off-take1.wav'], LAYOUT)).toThrow(FormatError)
  })

  it('are refused when one is a date or a counter that leads past any yard', () => {
    expect(() => rowsFromNames(['1.wav', '260504.wav'], LAYOUT)).toThrow(
      /^260504\.wav: would lie \d+ m along, and at most 10000 m are read; name it by its point, or write a sweep\.csv$/,
    )
  })

  it('are refused when there are more than a sheet may name', () => {
    const names = Array.from({ length: 1001 }, (_, i) => `${i}.wav`)
    expect(() => rowsFromNames(names, { startM: 0, spacingM: 1 })).toThrow(
      new FormatError('1000.wav', '', 'there are 1001 clips, and at most 1000 are read; keep one sweep in a folder'),
    )
    expect(rowsFromNames(names.slice(1), { startM: 0, spacingM: 1 }).rows).toHaveLength(1000)
  })

  it('need a spacing above 0', () => {
    expect(() => rowsFromNames([], { startM: 0, spacingM: 0 })).toThrow(InputError)
    expect(() => rowsFromNames([], { startM: 0, spacingM: Number.NaN })).toThrow(InputError)
    expect(() => rowsFromNames([], { startM: Number.POSITIVE_INFINITY, spacingM: 1 })).toThrow(InputError)
  })
})
