import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Stretch } from '../../../shared/line/line'
import { digFirst } from '../../../shared/locate/digFirst'
import { type DigPiece, digOrder } from '../../../shared/locate/digOrder'
import { digReason } from '../../../shared/locate/digReason'
import { expectedDigCost } from '../../../shared/locate/expectedDigCost'
import { close } from '../../support/close'
import { NO_LINE } from '../../support/idealSweep'

const piece = (fromM: number, probability: number, cost: number | null): DigPiece => ({
  fromM,
  toM: fromM + 1,
  probability,
  cost,
})
const stretch = (fromM: number, toM: number, digCostPerM: number | null): Stretch => ({
  fromM,
  toM,
  cover: 'grass',
  depthM: null,
  digCostPerM,
})

describe('the order of digging', () => {
  // Blackwell's rule as in Chew 1967 [Chew1967]; the figures worked by hand: 1 + 0.8·3 + 0.5·10 and 10 + 0.5·3 + 0.2·1.
  const worked = [piece(1, 0.5, 10), piece(2, 0.3, 3), piece(3, 0.2, 1)]

  it('is that of probability over cost: the third, the second, the first, for 8.4 where likeliest first costs 11.7 (rule 11)', () => {
    const order = digOrder(worked)
    expect(order.map(({ fromM }) => fromM)).toEqual([3, 2, 1])
    close(expectedDigCost(order), 8.4, { abs: 1e-12, because: 'rounding' })
    close(expectedDigCost(worked), 11.7, { abs: 1e-12, because: 'rounding' })
    const [reason] = digReason(order)
    expect(reason?.key).toBe('next_dig_order')
    close(reason?.values['expected_cost'] as number, 8.4, { abs: 1e-12, because: 'rounding' })
    close(reason?.values['likeliest_first_cost'] as number, 11.7, { abs: 1e-12, because: 'rounding' })
  })

  it('costs no more than any other order', () => {
    const pieces = fc.array(
      fc.record({ p: fc.double({ min: 0, max: 1, noNaN: true }), c: fc.double({ min: 0.01, max: 100, noNaN: true }) }),
      { minLength: 1, maxLength: 5 },
    )
    fc.assert(
      fc.property(pieces, (drawn) => {
        const total = Math.max(
          1,
          drawn.reduce((sum, { p }) => sum + p, 0),
        )
        const all = drawn.map(({ p, c }, i) => piece(i, p / total, c))
        const least = Math.min(...permutations(all).map((order) => expectedDigCost(order)!))
        expect(expectedDigCost(digOrder(all))!).toBeLessThanOrEqual(least * (1 + 1e-9) + 1e-9)
      }),
      { seed: 4, numRuns: 60 },
    )
  })

  it('is by probability a metre where a cost is not told, and then no cost is expected', () => {
    const order = digOrder([piece(1, 0.5, null), { ...piece(2, 0.3, 3), toM: 2.5 }])
    expect(order.map(({ fromM }) => fromM)).toEqual([2, 1])
    expect(expectedDigCost(order)).toBeNull()
    expect(digReason(order)).toEqual([])
  })

  it('says nothing of a single piece', () => {
    expect(digReason([piece(1, 0.8, 5)])).toEqual([])
  })
})

describe('the pieces to dig', () => {
  const alongM = Float64Array.from({ length: 101 }, (_, i) => i / 10)
  const even = { alongM, perM: alongM.map(() => 0.1) }

  it('are cut where the cost changes (rule 11)', () => {
    const line = { ...NO_LINE, stretches: [stretch(0, 4, 10), stretch(4, 10, 100)] }
    const pieces = digFirst(line, [[3, 5]], even)
    expect(pieces.map(({ fromM, toM, cost }) => [fromM, toM, cost])).toEqual([
      [3, 4, 10],
      [4, 5, 100],
    ])
    for (const { probability } of pieces) close(probability, 0.1, { abs: 1e-12, because: 'rounding' })
  })

  it('come from the windows of all sources, and windows that overlap are opened once (rules 11, 13)', () => {
    const pieces = digFirst(
      NO_LINE,
      [
        [8, 9],
        [1, 2],
        [1.5, 3],
      ],
      even,
    )
    expect(pieces.map(({ fromM, toM }) => [fromM, toM]).sort()).toEqual([
      [1, 3],
      [8, 9],
    ])
  })
})

function permutations<T>(items: readonly T[]): T[][] {
  if (items.length <= 1) return [[...items]]
  return items.flatMap((item, i) => permutations(items.filter((_, k) => k !== i)).map((rest) => [item, ...rest]))
}
