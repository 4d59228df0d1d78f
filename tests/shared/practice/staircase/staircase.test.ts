import { describe, expect, it } from 'vitest'
import { Random } from '../../../../shared/base/random'
import { mean } from '../../../../shared/base/statistics'
import {
  FIRST_STAIRS,
  STAIRS,
  STAIRS_SHARE,
  type StairTrial,
  stairsAfter,
  stepStairs,
} from '../../../../shared/practice/staircase/staircase'
import { shareRight, threshold } from '../../../../shared/practice/staircase/threshold'
import { close } from '../../../support/close'

interface SimulatedListener {
  readonly thresholdDb: number
  readonly slopeDb: number
  readonly guess: number
  readonly lapse: number
}

/** Answers by chance, as often right as the listener's curve says. */
function climbed(listener: SimulatedListener, count: number, seed: string): StairTrial[] {
  return climbedBy((levelDb) => shareRight(levelDb, listener), count, seed)
}

/** The same for somebody who hears by any other curve. */
function climbedBy(shareAt: (levelDb: number) => number, count: number, seed: string): StairTrial[] {
  const random = new Random(seed)
  const trials: StairTrial[] = []
  let stairs = FIRST_STAIRS
  for (let i = 0; i < count; i++) {
    const { levelDb } = stairs
    const right = random.chance(shareAt(levelDb))
    trials.push({ levelDb, right })
    stairs = stepStairs(stairs, right)
  }
  return trials
}

describe('the stairs', () => {
  it('go down after two right answers in a row and up after a wrong one', () => {
    const levels = [true, true, false, true, true, true, false].map(
      (_, i, all) => stairsAfter(all.slice(0, i + 1).map((right) => ({ right }))).levelDb,
    )
    const { firstDb: first, largeStepDb: large, smallStepDb: small } = STAIRS
    const down = first - large
    // Down by a large step, up (first turn), down by a small one (second turn), and up again.
    expect(levels).toEqual([first, down, down + large, first, first - small, first - small, first])
    expect(stairsAfter([true, true, false].map((right) => ({ right }))).turnsDb).toEqual([down])
  })

  it('stay within what can be mixed', () => {
    const always = stairsAfter(Array.from({ length: 200 }, () => ({ right: true })))
    const never = stairsAfter(Array.from({ length: 200 }, () => ({ right: false })))
    expect([always.levelDb, never.levelDb]).toEqual([STAIRS.lowestDb, STAIRS.highestDb])
  })

  it('settle where 70.7 % are right, whatever guessing gets right (seeds levitt-0 to levitt-2)', () => {
    close(100 * STAIRS_SHARE, 70.7, { abs: 0.05, because: 'Levitt 1971, table I, has three places [Levitt1971]' })
    for (const [i, guess] of [0, 1 / 6, 0.5].entries()) {
      const listener = { thresholdDb: 6, slopeDb: 3, guess, lapse: 0 }
      const trials = climbed(listener, 20_000, `levitt-${i}`).slice(100)
      const because = 'steps of 2 dB on a curve that is not straight; 20 000 answers scatter by 0.004'
      close(mean(trials.map(({ right }) => Number(right))), STAIRS_SHARE, { abs: 0.03, because })
      close(shareRight(mean(trials.map(({ levelDb }) => levelDb)), listener), STAIRS_SHARE, { abs: 0.05, because })
    }
  })
})

describe('a threshold', () => {
  const LISTENERS: readonly SimulatedListener[] = [
    { thresholdDb: 3, slopeDb: 1, guess: 0.5, lapse: 0 },
    { thresholdDb: 8, slopeDb: 2, guess: 0.5, lapse: 0.02 },
    { thresholdDb: -4, slopeDb: 3, guess: 0.5, lapse: 0.05 },
    { thresholdDb: 5, slopeDb: 2, guess: 1 / 6, lapse: 0.02 },
    { thresholdDb: 12, slopeDb: 4, guess: 0.2, lapse: 0.01 },
  ]

  it.each(LISTENERS)(
    'of a listener at $thresholdDb dB (slope $slopeDb dB, guess $guess) is measured within its stated error in 95 of 100 runs',
    (listener) => {
      let held = 0
      let widest = 0
      for (let run = 0; run < 100; run++) {
        const trials = climbed(listener, 60, `run ${run} at ${listener.thresholdDb}`)
        const { lowDb, highDb } = threshold(trials, listener.guess)!
        if (lowDb <= listener.thresholdDb && listener.thresholdDb <= highDb) held++
        widest = Math.max(widest, highDb - lowDb)
      }
      expect(held).toBeGreaterThanOrEqual(95)
      expect(widest).toBeLessThan(40) // an interval that holds everything would hold it always
    },
  )

  // Nobody hears by just the curve that is supposed: two others that the literature fits to yes and no [Levitt1971].
  const OTHER_CURVES = {
    'a cumulative normal': (levelDb: number) => 0.5 + 0.49 * normalShare((levelDb - 5) / 3),
    'a Weibull curve': (levelDb: number) => 0.5 + 0.48 * (1 - Math.exp(-(10 ** (((levelDb - 6) / 20) * 3)))),
    'one that tires: the last answers need 3 dB more': null,
  } as const

  it.each(Object.entries(OTHER_CURVES))(
    'of somebody who hears by %s is within its stated error in 95 of 100 runs all the same',
    (_, curve) => {
      const plain = { thresholdDb: 6, slopeDb: 2, guess: 0.5, lapse: 0.01 }
      const shareAt = curve ?? ((levelDb: number) => shareRight(levelDb, plain))
      const trueDb = levelWhere(shareAt)
      let held = 0
      const errorsDb: number[] = []
      for (let run = 0; run < 100; run++) {
        let asked = 0
        const tiring = (levelDb: number) => shareAt(levelDb - (3 * asked++) / 60)
        const trials = climbedBy(curve === null ? tiring : shareAt, 60, `other ${run}`)
        const { levelDb, lowDb, highDb } = threshold(trials, 0.5)!
        // Of one that tires it is the threshold in the middle of the round.
        const wantedDb = curve === null ? trueDb + 1.5 : trueDb
        if (lowDb <= wantedDb && wantedDb <= highDb) held++
        errorsDb.push(levelDb - wantedDb)
      }
      expect(held).toBeGreaterThanOrEqual(95)
      close(mean(errorsDb), 0, { abs: 1, because: 'a curve that is not the supposed one moves it by less than a step' })
    },
  )

  it('comes with an error that shrinks with more answers, and of a few decibels after sixty', () => {
    const listener = { thresholdDb: 6, slopeDb: 2, guess: 0.5, lapse: 0.01 }
    const widths = [20, 60, 240].map((count) =>
      mean(
        Array.from({ length: 10 }, (_, run) => {
          const { lowDb, highDb } = threshold(climbed(listener, count, `width ${run}`), 0.5)!
          return highDb - lowDb
        }),
      ),
    )
    expect(widths[0]).toBeGreaterThan(widths[1]!)
    expect(widths[1]).toBeGreaterThan(widths[2]!)
    expect(widths[1]).toBeLessThan(12)
    expect(widths[2]).toBeLessThan(6)
  })

  it('is not made of a handful of answers, nor where guessing is right as often', () => {
    expect(threshold(climbed(LISTENERS[0]!, 10, 'few'), 0.5)).toBeNull()
    expect(() => threshold([], 0.8)).toThrow('guess is 0.8')
  })
})

/** Φ by its integral; no approximation that could be ours as well. */
function normalShare(z: number): number {
  const steps = 2000
  let sum = 0
  for (let i = 0; i < steps; i++) {
    const x = -8 + ((z + 8) * (i + 0.5)) / steps
    sum += Math.exp((-x * x) / 2)
  }
  return (sum * (z + 8)) / steps / Math.sqrt(2 * Math.PI)
}

/** Where the share that is wanted of the stairs is right, by halving, dB. */
function levelWhere(shareAt: (levelDb: number) => number): number {
  let [low, high] = [-40, 60]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (shareAt(middle) < STAIRS_SHARE) low = middle
    else high = middle
  }
  return low
}
