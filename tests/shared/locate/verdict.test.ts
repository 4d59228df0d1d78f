import { expect, it } from 'vitest'
import type { Facts } from '../../../shared/locate/facts'
import { judge } from '../../../shared/locate/verdict'
import { NO_LINE } from '../../support/idealSweep'

/** Points a metre apart over a pipe half a metre down; all that a place needs to be located. */
const sure = { probability: 0.99, widthM: 0.5, overFloorDb: 20, ringSupport: 3, airOff: true, pastEnd: 0 }

it('is located where a source is sure, in a narrow window on the line, and rings (rule 9)', () => {
  expect(judgeOf(sure)).toEqual(['located'])
})

it('is unsure where the window is wider than two spacings, and says so (rule 9)', () => {
  expect(judgeOf({ ...sure, widthM: 1.95 })).toEqual(['located'])
  expect(judgeOf({ ...sure, widthM: 2.05 })).toEqual(['unsure', 'reason_wide_window'])
})

it('lets a window be as wide as two depths where the pipe is deep (rule 9)', () => {
  expect(judgeOf({ ...sure, widthM: 2.9, depthM: 1.5 })).toEqual(['located'])
  expect(judgeOf({ ...sure, widthM: 3.1, depthM: 1.5 })).toEqual(['unsure', 'reason_wide_window'])
})

it('is unsure where rings are missing that should be heard; without air-off clips they must speak for it (rule 9)', () => {
  expect(judgeOf({ ...sure, ringSupport: -1 })).toEqual(['located'])
  expect(judgeOf({ ...sure, ringSupport: -5 })).toEqual(['unsure', 'reason_no_bubbling'])
  expect(judgeOf({ ...sure, ringSupport: -1, airOff: false })).toEqual(['unsure', 'reason_no_bubbling'])
})

it('is unsure where more than a fifth of the density lies past an end (rule 9)', () => {
  expect(judgeOf({ ...sure, pastEnd: 0.15 })).toEqual(['located'])
  expect(judgeOf({ ...sure, pastEnd: 0.25 })).toEqual(['unsure', 'reason_past_end'])
})

it('is unsure where a sound neither rings nor stands ten decibels over the place with the air off (rule 9)', () => {
  const less = { ...sure, probability: 0.86 }
  expect(judgeOf(less)).toEqual(['located'])
  expect(judgeOf({ ...less, ringSupport: 0 })).toEqual(['located'])
  expect(judgeOf({ ...sure, ringSupport: 0, overFloorDb: 8 })).toEqual(['unsure', 'reason_not_plain'])
  expect(judgeOf({ ...sure, overFloorDb: 8 })).toEqual(['located'])
  expect(judgeOf({ ...sure, probability: 0.84 })).toEqual(['unsure', 'reason_weak_source'])
})

it('hears no leak where a source is unlikely, sooner where it is faint (rule 9)', () => {
  expect(judgeOf({ ...sure, probability: 0.14 })[0]).toBe('no leak heard')
  expect(judgeOf({ ...sure, probability: 0.16 })[0]).toBe('unsure')
  expect(judgeOf({ ...sure, probability: 0.4, overFloorDb: 3 })[0]).toBe('no leak heard')
})

/** Verdict and its reasons, from no more than it looks at: a leak 5 m along a line of 10 m. */
function judgeOf(case_: typeof sure & { depthM?: number }): string[] {
  const grid = Float64Array.from({ length: 141 }, (_, i) => -2 + i * 0.1)
  // Two even blocks: one on the line, one past its end.
  const perM = grid.map((along) =>
    along > 4 && along < 6 ? (1 - case_.pastEnd) / 2 : along > 10 ? case_.pastEnd / 2 : 0,
  )
  const facts = {
    line: { ...NO_LINE, lengthM: null, depthM: case_.depthM ?? 0.5 },
    model: { settings: [{ alongM: 5, off: case_.airOff ? {} : null }] },
    scan: { perM, tried: [{ logEvidence: 0, fit: { overFloorDb: Float64Array.of(case_.overFloorDb) } }] },
    grid,
    range: [0, 10],
    spacingM: 1,
    candidate: { alongM: 5, windowM: [5 - case_.widthM / 2, 5 + case_.widthM / 2], probability: case_.probability },
    points: [{ alongM: 5, evidence: { overFloorDb: case_.overFloorDb, bubbling: 0.5 } }],
    ringSupport: case_.ringSupport,
  } as unknown as Facts
  const { verdict, why } = judge(facts)
  return [verdict, ...why.map(({ key }) => key)]
}
