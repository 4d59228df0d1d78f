import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readLabels } from '../../../shared/learn/readLabels'

const demo = readFileSync(resolve(import.meta.dirname, '../../../demo-audio/labels.csv'), 'utf8')

describe('labels of a folder', () => {
  it('are read from the demo job', () => {
    const clips = readLabels(demo, 'labels.csv')
    expect(clips).toHaveLength(28)
    expect(clips[0]).toEqual({
      file: '01-on.wav',
      label: 'no leak',
      job: 'Alder Square',
      device: '',
      cover: '',
      alongM: 0,
      leakAtM: 6.35,
    })
    expect(clips.filter(({ label }) => label === 'spoilt').map(({ file }) => file)).toEqual(['04-on.wav'])
  })

  it('may be parted by semicolons, with a byte order mark, columns in any order and case', () => {
    const clips = readLabels('\ufeffLabel;note;FILE;device\nLEAK;x;a.wav;plate\n', 'l.csv')
    expect(clips).toMatchObject([{ file: 'a.wav', label: 'leak', device: 'plate', alongM: null }])
  })

  it('are refused in clear words', () => {
    const refused = (text: string) => () => readLabels(text, 'l.csv')
    expect(refused('')).toThrow('l.csv, row 1: has no column file')
    expect(refused('file,what\n')).toThrow('has no column label')
    expect(refused('file,label\na.wav,maybe\n')).toThrow('row 2, label: is "maybe"; write leak, no leak, spoilt')
    expect(refused('file,label\n../a.wav,leak\n')).toThrow('row 2, file: "../a.wav"')
    expect(refused('file,label\na.wav,leak\na.wav,no leak\n')).toThrow('row 3: names "a.wav" again after row 2')
    expect(refused('file,label,along_m\na.wav,leak,near\n')).toThrow('row 2, along_m: is "near"')
  })
})
