import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../../../shared/job/job'
import { sharedJob } from '../../../../shared/jobfile/sharedJob'
import { readLineJson } from '../../../../shared/line/readLineJson'
import { mayBeShared } from '../../../../shared/practice/library/libraryClip'
import { libraryOfJob } from '../../../../shared/practice/library/libraryOfJob'
import { readLabelsCsv } from '../../../../shared/practice/library/readLabelsCsv'

const demo = readFileSync(resolve(import.meta.dirname, '../../../../demo-audio/labels.csv'), 'utf8')
const read = (text: string) => readLabelsCsv(text, 'labels.csv')

describe('the labels of a folder', () => {
  it('are those of the demo, but for the spoilt clip', () => {
    const clips = read(demo)
    expect(clips).toHaveLength(27)
    expect(clips.filter(({ label }) => label === 'leak').map(({ file }) => file)).toEqual([
      '06-on.wav',
      '07-on.wav',
      '08-on.wav',
    ])
    expect(clips[0]).toMatchObject({ job: 'Alder Square', alongM: 0, leakAtM: 6.35, consent: 'not told', licence: '' })
  })

  it('may tell source, consent, licence, cover and device', () => {
    const [clip] = read('file;label;consent;licence;cover;along_m\na.wav;Voice;given;CC-BY-4.0;grass;3,5\n')
    expect(clip).toMatchObject({ label: 'voice', consent: 'given', licence: 'CC-BY-4.0', cover: 'grass', alongM: 3.5 })
    expect(mayBeShared(clip!)).toBe(true)
    expect(mayBeShared({ consent: 'given', licence: ' ' })).toBe(false)
    expect(mayBeShared({ consent: 'not told', licence: 'CC-BY-4.0' })).toBe(false)
  })

  it.each([
    ['', 'labels.csv: is empty; the first row must name file and label'],
    ['file\na.wav', 'labels.csv, row 1: the column label is missing; name it'],
    ['file,label\na.wav,loud', 'labels.csv, row 2, label: is "loud"; write one of leak, no leak, bubbling'],
    ['file,label\n../a.wav,leak', 'row 2, file: leaves the folder'],
    ['file,label\na.wav,leak\na.wav,leak', 'row 3, file: "a.wav" stands twice'],
    ['file,label,along_m\na.wav,leak,far', 'row 2, along_m: is "far"; write a number'],
    ['file,label,consent\na.wav,leak,yes', 'row 2, consent: is "yes"; write one of given, own'],
  ])('that are wrong are told with row and mend: %s', (text, message) => {
    expect(() => read(text)).toThrow(message)
  })
})

describe('the clips of a finished job', () => {
  const row = (point: number, alongM: number, air: 'on' | 'off') => ({
    point,
    alongM,
    air,
    file: `${point}-${air}.wav`,
  })
  const clip = (point: number, alongM: number, air: 'on' | 'off') => ({
    row: row(point, alongM, air),
    sound: { sha256: `${point}${air}`, bytes: 1 },
    problems: [],
  })
  const job = (found: readonly unknown[]) =>
    ({
      name: 'Back yard',
      lines: [
        {
          line: readLineJson({ length_m: 10, depth_m: 0.5 }, 'line.json').line,
          sweeps: [{ clips: [clip(1, 4, 'on'), clip(1, 4, 'off'), clip(2, 5, 'on'), clip(3, 7, 'on')] }],
          found,
        },
      ],
    }) as unknown as Job

  it('are near and far from what was found: with its air off a clip has no leak, and far off with air nobody knows', () => {
    const clips = libraryOfJob(job([{ way: 'opened', alongM: 4.4 }]))
    expect(clips.map(({ file, label }) => [file, label])).toEqual([
      ['1-on.wav', 'leak'],
      ['1-off.wav', 'no leak'],
      ['2-on.wav', 'leak'],
    ])
    expect(clips[0]).toMatchObject({ leakAtM: 4.4, withoutSha256: '1off', consent: 'not told', invented: false })
    expect(clips[2]!.withoutSha256).toBeNull()
  })

  it('say that they are invented where their line does, as that of the demo does, with the customer and without', () => {
    const text = readFileSync(resolve(import.meta.dirname, '../../../../demo-audio/line.json'), 'utf8')
    const { line } = readLineJson(JSON.parse(text), 'line.json')
    const seen = [{ way: 'opened', alongM: 4 }]
    const demo = { ...job(seen), lines: job(seen).lines.map((each) => ({ ...each, line, confirmations: [] })) } as Job
    const clips = libraryOfJob(demo)
    expect(clips.length).toBeGreaterThan(0)
    for (const { invented, consent } of clips) expect([invented, consent]).toEqual([true, 'invented'])
    for (const { invented } of libraryOfJob(job(seen))) expect(invented).toBe(false)
    expect(sharedJob(demo, { points: null, withoutCustomer: true }).lines[0]!.line.unknown).toEqual({ invented: true })
  })

  it('teach nothing where nothing was seen', () => {
    expect(libraryOfJob(job([]))).toEqual([])
    expect(libraryOfJob(job([{ way: 'by ear', alongM: 4 }]))).toEqual([])
    expect(libraryOfJob(job([{ way: 'opened', alongM: null }]))).toEqual([])
  })
})
