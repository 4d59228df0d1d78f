import { expect, it } from 'vitest'
import type { LocateAnswer } from '../../../shared/locate/answer'
import { locate } from '../../../shared/locate/locate'
import { idealSweep } from '../../support/idealSweep'

const sweep = {
  count: 6,
  spacingM: 1,
  depthM: 0.5,
  leakAlongM: 4.7,
  overFloorDb: 18,
  air: ['on'] as const,
  gainSdDb: 2.5,
  scatterDb: 1.5,
}

it('advises places that are no points yet, and the window shrinks when they are listened to (seeds 1, 3 and 4) (rule 11)', () => {
  const widths = [1, 3, 4].map((seed) => {
    const before = locate(idealSweep({ ...sweep, seed }))
    const advice = before.listenNext[0]!
    expect(before.points.map(({ alongM }) => alongM)).not.toContain(advice.alongM)
    const after = locate(idealSweep({ ...sweep, seed, extraAlongM: [advice.alongM] }))
    return { before: widthOf(before), expected: advice.expectedWindowM, after: widthOf(after) }
  })
  expect(widths.every(({ before, expected }) => expected < before)).toBe(true)
  expect(widths.filter(({ before, after }) => after < before).length).toBeGreaterThanOrEqual(2)
  const sum = (of: (width: (typeof widths)[number]) => number) => widths.reduce((all, width) => all + of(width), 0)
  expect(sum(({ after }) => after)).toBeLessThan(0.9 * sum(({ before }) => before))
})

it('advises left of, over and right of the likeliest place together where the route is unsure (rule 11)', () => {
  const { line, soundings } = idealSweep({ ...sweep, leakAlongM: 2.3, overFloorDb: 25, seed: 2 })
  const { sources, listenNext } = locate({ line: { ...line, routeSdM: 0.6 }, soundings })
  expect(listenNext).toHaveLength(3)
  const [left, over, right] = listenNext
  expect(left!.offsetM).toBeGreaterThanOrEqual(0.5)
  expect([over!.offsetM, right!.offsetM]).toEqual([0, -left!.offsetM])
  expect(new Set(listenNext.map(({ alongM }) => alongM)).size).toBe(1)
  expect(Math.abs(over!.alongM - sources[0]!.alongM)).toBeLessThan(0.25)
  expect(new Set(listenNext.map(({ expectedWindowM }) => expectedWindowM)).size).toBe(1)
})

it('advises places beyond the end that the source may lie past (rule 11)', () => {
  const { line, soundings } = idealSweep({ ...sweep, leakAlongM: 5.7, overFloorDb: 30, seed: 3 })
  const answer = locate({ line, soundings })
  expect(answer.reasons.map(({ key }) => key)).toContain('reason_past_end')
  expect(answer.listenNext.length).toBeGreaterThanOrEqual(1)
  for (const { alongM } of answer.listenNext) expect(alongM).toBeGreaterThan(5)
})

function widthOf({ sources }: LocateAnswer): number {
  return sources[0]!.windowM[1] - sources[0]!.windowM[0]
}
