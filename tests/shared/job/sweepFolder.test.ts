import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { JobClip, JobSweep } from '../../../shared/job/job'
import type { Recording } from '../../../shared/job/recording'
import { recordingProblems } from '../../../shared/job/recordingProblems'
import { sweepFolder } from '../../../shared/job/sweepFolder'
import { readLineJson } from '../../../shared/line/readLineJson'
import { NOTHING_AGAINST } from '../../../shared/sweep/phoneAccount'
import { phoneProblems } from '../../../shared/sweep/phoneProblems'
import { readSweepCsv } from '../../../shared/sweep/readSweepCsv'
import type { SweepRow } from '../../../shared/sweep/sweep'

const { line } = readLineJson({ length_m: 12.3, depth_m: 0.5 }, 'line.json')

const ROW: SweepRow = {
  point: 6,
  alongM: 5.1,
  file: '06-on.wav',
  air: 'on',
  take: 1,
  sharedTake: false,
  sweep: '1',
  offsetM: 0,
  timeS: null,
  contact: null,
  airKpa: null,
  note: '',
  unknown: {},
}

const clip = (row: Partial<SweepRow>, digit = 'a'): JobClip => ({
  row: { ...ROW, ...row },
  sound: { sha256: digit.repeat(64), bytes: 100 },
  problems: [],
})
const sweep = (name: string, clips: readonly JobClip[]): JobSweep => ({
  id: name,
  name,
  clips: clips.map((each) => ({ ...each, row: { ...each.row, sweep: name } })),
  problems: [],
})
const rowsOf = (sweeps: readonly JobSweep[]) => readSweepCsv(sweepFolder({ line, sweeps })!.sheet, 'sweep.csv').rows
const pathsOf = (sweeps: readonly JobSweep[]) => sweepFolder({ line, sweeps })!.files.map(({ path }) => path)

describe('the sweep folder of a line', () => {
  it('reads as the line itself, sweep by sweep', () => {
    const sweeps = [
      sweep('1', [
        clip({ timeS: 1_700_000_000.125, note: 'wet, "soft"' }),
        clip({ air: 'off', file: '06-off.wav' }, 'b'),
      ]),
      sweep('fine', [clip({ point: 61, alongM: 5.35, file: 'fine/61.wav', contact: 'spike', offsetM: -0.2 }, 'c')]),
    ]
    expect(rowsOf(sweeps)).toEqual(sweeps.flatMap(({ clips }) => clips.map(({ row }) => row)))
    expect(readLineJson(sweepFolder({ line, sweeps })!.line, 'line.json').line).toEqual(line)
    expect(pathsOf(sweeps)).toEqual(['06-on.wav', '06-off.wav', 'fine/61.wav'])
  })

  it('is not there without a clip', () => {
    expect(sweepFolder({ line, sweeps: [sweep('1', [])] })).toBeNull()
  })

  it('gives clips that share no setting-down a take of their own beside those that do', () => {
    const sweeps = [
      sweep('1', [clip({}), clip({ air: 'off', file: '06-off.wav' })]),
      sweep('2', [
        clip({ sharedTake: true, take: 2 }),
        clip({ sharedTake: true, take: 2, air: 'off', file: 'off.wav' }),
        clip({ file: 'alone.wav' }),
        clip({ file: 'alone too.wav', air: 'off', take: 2 }),
      ]),
    ]
    const rows = rowsOf(sweeps)
    expect(rows.every((row) => row.sharedTake)).toBe(true)
    expect(rows.map((row) => row.take)).toEqual([1, 2, 2, 2, 1, 3])
  })

  it('names apart what is not the same, and shares a file where it is', () => {
    const sweeps = [
      sweep('1', [clip({ file: '06.wav' }), clip({ point: 7, file: '06.wav' })]),
      sweep('2', [clip({ file: '06.WAV' }, 'b'), clip({ point: 7, file: 'sweep.csv' }, 'c')]),
      sweep('3', [clip({ file: '06.wav/x.wav' }, 'd'), clip({ point: 8, file: 'a/b.wav' }, 'e')]),
      sweep('4', [clip({ file: 'a' }, 'f'), { ...clip({ point: 9, file: '06.wav' }), sound: null }]),
    ]
    expect(pathsOf(sweeps)).toEqual(['06.wav', '06-2.WAV', 'sweep-2.csv', 'clips-2/06.wav/x.wav', 'a/b.wav', 'a-2'])
    expect(rowsOf(sweeps).at(-1)!.file).toBe('06-3.wav')
  })

  it('keeps settings-down as they are: clips are together afterwards that were together before (seed 1)', () => {
    const anyClip = fc.record({
      point: fc.integer({ min: 1, max: 3 }),
      take: fc.integer({ min: 1, max: 3 }),
      air: fc.constantFrom<('on' | 'off')[]>('on', 'off'),
      sharedTake: fc.boolean(),
    })
    fc.assert(
      fc.property(fc.uniqueArray(anyClip, { minLength: 1, selector: (row) => JSON.stringify(row) }), (told) => {
        const unshared = new Set<string>()
        const rows = told.filter((row) => {
          const key = `${row.point} ${row.air}`
          if (row.sharedTake || !unshared.has(key)) return row.sharedTake || unshared.add(key)
          return false
        })
        const sweeps = [
          sweep(
            '1',
            rows.map((row, i) => clip({ ...row, file: `${i}.wav` })),
          ),
        ]
        expect(groups(rowsOf(sweeps))).toEqual(groups(sweeps[0]!.clips.map(({ row }) => row)))
      }),
      { seed: 1, numRuns: 200 },
    )
  })
})

/** Files that share a setting-down, as the locator tells it. */
function groups(rows: readonly SweepRow[]): string[] {
  const byKey = new Map<string, string[]>()
  for (const row of rows) {
    const key = row.sharedTake ? `${row.point} ${row.take}` : row.file
    byKey.set(key, [...(byKey.get(key) ?? []), row.file])
  }
  return [...byKey.values()].map((files) => files.sort().join()).sort()
}

describe('what the phone said against its recording', () => {
  const settings = {
    echoCancellation: false,
    noiseSuppression: null,
    autoGainControl: true,
    sampleRateHz: 48_000,
    sampleSizeBits: 16,
    channelCount: 1,
  }
  const recording: Recording = {
    device: 'USB',
    sampleRateHz: 48_000,
    channelCount: 1,
    keptBits: 16,
    settings,
    wantedS: 10,
    endedBy: 'hidden',
  }
  const problemsIn = (recorded: Recording) =>
    phoneProblems(rowsOf([sweep('1', [{ ...clip({}), recording: recorded }])])[0]!.phone ?? NOTHING_AGAINST)

  it('stands in the sheet, so that the folder says of the clip what the job says', () => {
    const headset = { ...recording, settings: { ...settings, sampleRateHz: 8_000 } }
    for (const each of [recording, headset]) expect(problemsIn(each)).toEqual(recordingProblems(each))
    expect(problemsIn(headset).map(({ severity }) => severity)).toEqual(['weak', 'weak', 'note'])
  })

  it('does not when there is nothing', () => {
    const good: Recording = { ...recording, settings: { ...settings, autoGainControl: false }, endedBy: null }
    expect(sweepFolder({ line, sweeps: [sweep('1', [{ ...clip({}), recording: good }])] })!.sheet).toBe(
      sweepFolder({ line, sweeps: [sweep('1', [clip({})])] })!.sheet,
    )
  })

  it('stays with a clip that came in by a sheet', () => {
    const phone = { processing: ['noise' as const], deviceHz: null, endedBy: null }
    expect(rowsOf([sweep('1', [clip({ phone })])])[0]!.phone).toEqual(phone)
  })
})
