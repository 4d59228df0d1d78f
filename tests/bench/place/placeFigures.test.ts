import { expect, it } from 'vitest'
import { close } from '../../support/close'
import { judgedSweep } from './judgedSweep'
import { boundSpread, placeFigures, pooled } from './placeFigures'

const noLeak = { leaks: 0, error: null, exitError: null, loudestError: null, parabolaError: null, window: null }

it('counts errors over all leak sweeps, whatever the verdict, and none without a leak', () => {
  const sweeps = [
    ...[0, 0.1, 0.2, 0.3].map((error) => judgedSweep({ error })),
    judgedSweep({ error: 4, verdict: 'no leak heard', sources: 0 }),
    judgedSweep({ ...noLeak, family: 'no leak', verdict: 'no leak heard' }),
  ]
  const { error, leakSweeps, none, missed } = placeFigures(sweeps)
  expect(leakSweeps).toBe(5)
  expect(error!.median).toBe(0.2)
  // Between the fourth and the fifth of five in order, at 0.6 of the way. [HyndmanFan1996]
  close(error!.p90, 0.3 + 0.6 * 3.7, { abs: 1e-12, because: 'closed form' })
  expect(none).toEqual({ count: 2, of: 6 })
  expect(missed).toEqual({ count: 1, of: 5 })
})

it('counts an answer without a window as one that does not hold the leak', () => {
  const { held, withoutWindow, width } = placeFigures([judgedSweep(), judgedSweep({ window: null })])
  expect(held).toEqual({ count: 1, of: 2 })
  expect(withoutWindow).toBe(1)
  expect(width).toBe(0.4)
})

it('compares pair by pair with the loudest point', () => {
  // Differences −1, −2, −3: mean −2, standard deviation 1.
  const { lessLoudest } = placeFigures([1, 2, 3].map((loudestError) => judgedSweep({ loudestError })))
  close(lessLoudest!.mean, -2, { abs: 1e-12, because: 'closed form' })
  close(lessLoudest!.se, 1 / Math.sqrt(3), { abs: 1e-12, because: 'closed form' })
})

it('sets the median error against 0.674 standard deviations, where there is a bound', () => {
  const sweeps = [judgedSweep({ error: 0.3, bound: 0.2 }), judgedSweep({ error: 9, bound: null })]
  close(placeFigures(sweeps).overBound, 0.3 / (0.6745 * 0.2), { rel: 1e-4, because: 'quartile of the normal: 0.6745' })
})

it("shows a bound's 90th percentile as a half normal has it: 1.645 standard deviations", () => {
  close(boundSpread([2])!.p90, 2 * 1.645, { rel: 0.01, because: 'four hundred parts' })
  expect(boundSpread([])).toBeNull()
})

it('keeps the families with questions of their own out of the pool', () => {
  const families = ['plain', 'two leaks', 'no leak', 'sparse', 'shifted exit', 'slab']
  expect(pooled(families.map((family) => judgedSweep({ family }))).map(({ family }) => family)).toEqual([
    'plain',
    'slab',
  ])
})
