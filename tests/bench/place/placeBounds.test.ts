import { expect, it } from 'vitest'
import { judgedSweep } from './judgedSweep'
import type { Judged } from './judgeSweep'
import { placeBounds } from './placeBounds'

const many = (count: number, changes: Partial<Judged> = {}) => Array.from({ length: count }, () => judgedSweep(changes))
const found = (sweeps: readonly Judged[], start: string) =>
  placeBounds(sweeps)
    .filter(({ what }) => what.startsWith(start))
    .map(({ met }) => met)

const miss: Partial<Judged> = { window: { width: 0.4, holds: false, score: 4 } }
const silent: Partial<Judged> = { family: 'no leak', leaks: 0, error: null, loudestError: null, window: null }

it('lets windows hold the leak in 74 to 86 %, no more and no less', () => {
  const coverage = (holds: number) => found([...many(holds), ...many(100 - holds, miss)], 'pooled: windows')
  expect([73, 74, 80, 86, 87].map(coverage)).toEqual([[false], [true], [true], [true], [false]])
})

it('names the family with the fewest, and judges it from 100 sweeps on', () => {
  const slab = (count: number) => [
    ...many(100),
    ...many(count / 2, { ...miss, family: 'slab' }),
    ...many(count / 2, { family: 'slab' }),
  ]
  expect(found(slab(100), 'fewest windows that hold the leak: slab')).toEqual([false])
  expect(found(slab(60), 'fewest windows that hold the leak: plain')).toEqual([true])
  expect(found(many(60), 'fewest windows')).toEqual([null])
})

it('takes a family for worse than the loudest point beyond twice the standard error only', () => {
  const worse = many(20).map((each, i) => ({ ...each, loudestError: 0, error: i % 2 === 0 ? 0.2 : 0.1 }))
  expect(found(worse, 'worst family')).toEqual([false])
  const evenOdds = many(20).map((each, i) => ({ ...each, loudestError: 0.5, error: i % 2 === 0 ? 0 : 1.1 }))
  expect(found(evenOdds, 'worst family')).toEqual([true])
  expect(found(worse.slice(0, 9), 'worst family')).toEqual([])
})

it('breaks at the seventh place in 200 sweeps without a leak, and says when there were too few', () => {
  const places = (located: number, of: number) =>
    found([...many(located, silent), ...many(of - located, { ...silent, verdict: 'unsure' })], 'places claimed')
  expect(places(6, 200)).toEqual([true])
  expect(places(7, 200)).toEqual([false])
  expect(places(12, 400)).toEqual([true])
  expect(places(0, 50)).toEqual([null])
  expect(places(7, 50)).toEqual([false])
})

it('holds exact sweeps with wide errors of the ear to be good', () => {
  const sweeps = [...many(80), ...many(20, miss)]
  expect(placeBounds(sweeps).filter(({ met }) => met === false)).toEqual([])
})

it('counts what was missed, doubled and left unsaid', () => {
  const broken = (changes: Partial<Judged>, start: string) => found([...many(60), ...many(40, changes)], start)
  expect(broken({ verdict: 'no leak heard' }, 'leaks of 6 dB')).toEqual([false])
  expect(broken({ verdict: 'no leak heard', overFloorDb: 5 }, 'leaks of 6 dB')).toEqual([true])
  expect(broken({ sources: 2 }, 'single leaks')).toEqual([false])
  expect(broken({ isPlain: true, verdict: 'unsure' }, 'plain sweeps')).toEqual([false])
  expect(broken({ family: 'two leaks', leaks: 2, found: 1 }, 'both of two')).toEqual([false])
  expect(broken({ clips: { spoilt: 2, named: 1, wronglyAside: 0 } }, 'spoilt clips')).toEqual([false])
})
