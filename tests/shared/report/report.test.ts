import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CAUTIONS, type CautionStep } from '../../../shared/job/cautions'
import type { JobLine } from '../../../shared/job/job'
import { NO_MEND } from '../../../shared/job/mend'
import type { PressureTest } from '../../../shared/job/pressureTests'
import { freshPressureTest } from '../../../shared/job/pressureTests'
import { readLineJson } from '../../../shared/line/readLineJson'
import type { LocateAnswer } from '../../../shared/locate/answer'
import { customerReport } from '../../../shared/report/customerReport'
import { officeReport } from '../../../shared/report/officeReport'
import { proofCurve } from '../../../shared/report/proofCurve'
import type { ReportSection } from '../../../shared/report/report'
import { type ReportResult, reportResult } from '../../../shared/report/reportResult'
import { levelRange, spectrumPicture } from '../../../shared/report/spectrumPicture'
import { wordsOf } from '../../../shared/words/sentence'
import { WORDS } from '../../../shared/words/words'

const LINE: JobLine = {
  id: 'l',
  name: 'L',
  line: readLineJson({}, 'line.json').line,
  problems: [],
  sweeps: [],
  confirmations: [],
}
const SWEPT = {
  ...LINE,
  sweeps: [{ id: 's', name: '1', clips: [{ row: { file: 'a', point: 6, air: 'on' }, sound: null }], problems: [] }],
} as unknown as JobLine
const TAPE = { key: 'tape_at_point', values: { point: 6 } }
const ANSWER = {
  verdict: 'located',
  reasons: [],
  sources: [{ alongM: 6.4, windowM: [6.1, 6.6], windowProbability: 0.8, probability: 0.9, tape: TAPE }],
  points: [{ point: 6, alongM: 6, rank: 1, nearestProbability: 0.7, evidence: { levelDbFs: null, clipsUsed: 1 } }],
  clips: [{ file: 'a', used: true, problems: [] }],
  density: { alongM: [6, 7], perM: [1, 1] },
  digFirst: [],
  listenNext: [],
} as unknown as LocateAnswer

const RESULT: ReportResult = {
  timeS: 5,
  version: '0.0.9',
  answer: ANSWER,
  line: LINE.line,
  spectra: [{ point: 6, midHz: [100, 1000], onDbFs: [-30, null], offDbFs: [-60, -70] }],
  clips: [{ file: 'a', sha256: 'c'.repeat(64) }],
  how: 'now',
}

const keysOf = (sections: readonly ReportSection[], id: string) =>
  sections.find((section) => section.id === id)!.items.map(({ text }) => text.key)

const kept = (verdict: 'holds' | 'drops') => ({ timeS: 9, verdict, version: '0.0.9' })
const test = (id: string, createdS: number, verdict: 'holds' | 'drops' | null) =>
  freshPressureTest({ id, createdS, unit: 'psi', name: id, kept: verdict && kept(verdict) })

describe('the cautions', () => {
  const all = new Set<string>(Object.values(CAUTIONS).flat())

  it('are all in the report, whatever state the job is in and whatever was hidden (seed 3)', () => {
    const steps = Object.keys(CAUTIONS) as CautionStep[]
    const line = fc.record({
      hasAnswer: fc.boolean(),
      said: fc.constantFrom('yes' as const, 'no' as const, 'not sure' as const, null),
      isSwept: fc.boolean(),
      hasMend: fc.boolean(),
      closedS: fc.option(fc.nat(), { nil: null }),
      verdicts: fc.array(fc.constantFrom('holds' as const, 'drops' as const, null), { maxLength: 3 }),
      hidden: fc.subarray(steps),
    })
    fc.assert(
      fc.property(line, ({ hasAnswer, said, isSwept, hasMend, closedS, verdicts, hidden }) => {
        const jobLine = {
          ...(isSwept ? SWEPT : LINE),
          ...(hasMend && { mend: { ...NO_MEND, closedS } }),
          pressureTests: verdicts.map((verdict, i) => test(`t${i}`, i, verdict)),
          hiddenCautions: hidden,
        }
        const sections = customerReport({ line: jobLine, result: hasAnswer ? RESULT : null, said })
        expect(new Set(keysOf(sections, 'cautions'))).toEqual(all)
      }),
      { seed: 3, numRuns: 100 },
    )
    expect(all.size).toBeGreaterThan(10)
  })
})

describe('what was heard', () => {
  it('is not confirmed by ear unless somebody said yes', () => {
    const heard = (said: 'yes' | 'no' | 'not sure' | null) =>
      keysOf(customerReport({ line: SWEPT, result: RESULT, said }), 'heard')
    expect(heard(null)).toContain('report_not_by_ear')
    expect(heard('no')).toContain('report_ear_denies')
    expect(heard('not sure')).toContain('report_ear_unsure')
    expect(heard('yes')).toEqual(['report_located', 'report_by_ear', 'report_where_it_leaves'])
    for (const key of ['report_ear_denies', 'report_ear_unsure'] as const) {
      expect(WORDS[key].text).toContain('Not confirmed by ear')
    }
  })

  it('is nothing on a line that was not listened to, though an answer was handed in', () => {
    expect(keysOf(customerReport({ line: LINE, result: RESULT, said: 'yes' }), 'heard')).toEqual([
      'report_not_listened',
    ])
  })
})

describe('proofs', () => {
  const part = (testIds: readonly string[]) => ({ id: 'p', name: 'Start side', fromM: 0, toM: 6, testIds })
  const withTest = (each: ReturnType<typeof test>, startS: number | null) => ({
    ...LINE,
    pressureTests: [each],
    mend: { ...NO_MEND, parts: [part([each.id])], joint: { ...NO_MEND.joint, startS } },
  })
  const last = (line: JobLine) => keysOf(customerReport({ line, result: null, said: null }), 'mended').at(-1)

  it('count only when a closed test held, and tell whether that was before or after the joint', () => {
    expect(last(withTest(test('t', 10, 'holds'), 5))).toBe('report_part_proved_after')
    expect(last(withTest(test('t', 4, 'holds'), 5))).toBe('report_part_proved_before')
    expect(last(withTest(test('t', 10, 'holds'), null))).toBe('report_part_proved')
    expect(last(withTest(test('t', 10, 'drops'), 5))).toBe('report_part_not_proved')
    expect(last(withTest(test('t', 10, null), 5))).toBe('report_part_not_proved')
  })

  it('an open test proves nothing, and its readings come with their curve', () => {
    const reading = (id: string, timeS: number, value: number) => ({ id, timeS, value, note: '', leftOut: false })
    const open = { ...test('t', 0, null), readings: [reading('a', 0, 11), reading('b', 300, 10)] }
    const [, tested] = customerReport({ line: { ...LINE, pressureTests: [open] }, result: null, said: null })
    expect(tested!.items.map(({ text }) => text.key)).toEqual(['report_test_open', 'report_readings'])
    expect(tested!.items[1]!.curveOf).toBe('t')
    expect(tested!.items[1]!.text.values).toMatchObject({ held_min: 5, count: 2 })
  })
})

describe('the answer of a report', () => {
  const live = { answer: { ...ANSWER, verdict: 'unsure' as const }, soundings: [], timeS: 9, version: '0.2.0' }
  const closed = { ...SWEPT, mend: { ...NO_MEND, closedS: 8 } }
  const { how: _, ...kept } = RESULT

  it('of a closed job is the one that was kept, whatever is worked out since', () => {
    const result = reportResult({ ...closed, keptAnswer: kept }, live)
    expect(result).toMatchObject({ how: 'kept', version: '0.0.9', answer: { verdict: 'located' } })
  })

  it('that was worked out after the closing says so; of an open job it is the present one', () => {
    const result = reportResult(closed, live)
    expect(result).toMatchObject({ how: 'after', version: '0.2.0' })
    expect(keysOf(customerReport({ line: closed, result, said: null }), 'heard')).toContain('report_after_closing')
    expect(reportResult({ ...SWEPT, keptAnswer: kept }, live)).toMatchObject({ how: 'now', version: '0.2.0' })
    expect(reportResult(closed, null)).toBeNull()
  })
})

describe('a proof curve', () => {
  const reading = (id: string, timeS: number, value: number) => ({ id, timeS, value, note: '', leftOut: false })
  const read = {
    ...test('t', 0, 'holds'),
    readings: [reading('a', 0, 11), reading('b', 150, 11), reading('c', 300, 11)],
  }

  it('has the band as it was kept, and none where none was', () => {
    const band = [0, 300].map((timeS) => ({ timeS, kpa: 75.8, lowKpa: 75.5, highKpa: 76.1 }))
    const judged = { reasons: [], dropOf: null, fallKpaPerMin: null, band }
    const looks = (each: PressureTest) =>
      proofCurve(each)!.shapes.map((shape) => (shape.kind === 'path' ? shape.look : 'text'))
    expect(looks(read)).not.toContain('band')
    expect(looks({ ...read, kept: { ...read.kept!, judged } })).toEqual(
      expect.arrayContaining(['band', 'fit', 'reading']),
    )
  })

  it('is none with one reading', () => {
    expect(proofCurve({ ...read, readings: [reading('a', 0, 11)] })).toBeNull()
  })
})

describe('spectra', () => {
  it('are drawn on one scale, and a band that says nothing breaks the line', () => {
    const spectrum = {
      point: 6,
      midHz: [100, 200, 400, 800],
      onDbFs: [-33, null, -38, -36],
      offDbFs: [-62, -62, -61, null],
    }
    const range = levelRange([spectrum])
    expect(range).toEqual([-80, -20])
    const on = spectrumPicture(spectrum, range).shapes.find((shape) => shape.kind === 'path' && shape.look === 'on')
    expect(on?.kind === 'path' && on.d.match(/M/g)).toHaveLength(2)
  })
})

describe('every text', () => {
  it('has its words and all values they need', () => {
    const line: JobLine = {
      ...SWEPT,
      complaint: { said: 'loses water', ruledOut: ['pump'], isolation: 'plugs', waterPasses: 'poorly' },
      pressureTests: [test('t', 0, 'holds')],
      found: [
        {
          id: 'f',
          timeS: 1,
          way: 'opened',
          alongM: 6.4,
          cause: 'fitting',
          note: 'cracked',
          photo: { sha256: 'a'.repeat(64), bytes: 1 },
          shown: { windowM: [6.1, 6.6], probability: 0.8, alongM: 6.4, verdict: 'located', version: '0.0.9' },
        },
      ],
      mend: {
        ...NO_MEND,
        cutAtM: 6,
        steps: [{ id: 's', text: 'Dry fit', done: true }],
        joint: { ...NO_MEND.joint, startS: 3 },
        parts: [{ id: 'p', name: 'Start side', fromM: 0, toM: 6, testIds: ['t'] }],
      },
    }
    const of = { line, result: RESULT, said: null }
    const sections = [...customerReport(of), ...officeReport(of, '0.1.0')]
    const texts = sections.flatMap(({ heading, items }) => [
      wordsOf({ key: heading, values: {} }).text,
      ...items.map(({ text }) => wordsOf(text).text),
    ])
    expect(texts.filter((text) => text.includes('?'))).toEqual([])
    expect(sections.flatMap(({ items }) => items.map(({ text }) => text.key)).filter((key) => !(key in WORDS))).toEqual(
      [],
    )
    expect(texts).toContain('The window 6.10 m to 6.60 m held it, 0.00 m from the place named.')
  })
})
