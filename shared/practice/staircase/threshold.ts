import { InputError } from '../../base/errors'
import { STAIRS_SHARE, type StairTrial } from './staircase'

/** The smallest signal that is heard, and where it lies with what probability. */
export interface Threshold {
  /** Signal over noise at which 70.7 % of the answers are right, dB. */
  readonly levelDb: number
  readonly lowDb: number
  readonly highDb: number
}

/** Fewest answers of which a threshold is made. Chosen: below, the interval is wider than anybody's use for it. */
export const FEWEST_TRIALS = 15

/**
 * The stated interval holds this share of what is believed after the answers. Wider than the 95 % that are promised: no
 * listener hears by the curve that is supposed here, and some attend less than others.
 */
const HELD_SHARE = 0.98

/** What is believed before any answer: any level in this range alike, any slope alike in its logarithm. Chosen. */
const LEVELS_DB = { least: -30, most: 45, step: 0.5 } as const
const SLOPES_DB = [0.5, 0.75, 1.1, 1.6, 2.4, 3.5, 5, 7.5] as const
/** Shares of answers given past the matter: slips of the finger, a moment's thought elsewhere. Chosen. */
const LAPSES = [0.005, 0.03, 0.08] as const

/**
 * The threshold that the answers on the stairs speak for.
 *
 *     P(right at x) = g + (1 − g − l)·logistic((x − t)/s + k),   k so that P(right at t) = 70.7 %
 *
 * g is the share that guessing gets right. Every t, s and l on a grid is weighed by how well it explains all answers; the
 * slope and the lapses are then left out by summing over them. Reversals alone would throw away most of the answers.
 *
 * @param guess Share right by guessing, 0 (included) to 0.7.
 * @returns `null` with too few answers.
 * @throws {InputError} a guess out of its range.
 * @see Levitt 1971 for the share; Kontsevich & Tyler 1999 for the grid over threshold and slope. [Levitt1971]
 *      [KontsevichTyler1999]
 */
export function threshold(trials: readonly StairTrial[], guess: number): Threshold | null {
  if (!(guess >= 0 && guess < STAIRS_SHARE)) throw new InputError(`guess is ${guess}; must be 0 to 0.7`)
  if (trials.length < FEWEST_TRIALS) return null
  const levels = levelGrid()
  const counts = countsByLevel(trials)
  const logs = levels.map((levelDb) => logBeliefs(counts, levelDb, guess))
  const most = Math.max(...logs.flat())
  const belief = logs.map((each) => each.reduce((sum, log) => sum + Math.exp(log - most), 0))
  const total = belief.reduce((sum, each) => sum + each, 0)
  const at = (share: number) => levelAt(levels, belief, share * total)
  return { levelDb: at(0.5), lowDb: at((1 - HELD_SHARE) / 2), highDb: at((1 + HELD_SHARE) / 2) }
}

/** Share of right answers at a level, for a listener of this threshold, slope and share of lapses. */
export function shareRight(
  levelDb: number,
  { thresholdDb, slopeDb, guess, lapse }: { thresholdDb: number; slopeDb: number; guess: number; lapse: number },
): number {
  const reach = 1 - guess - lapse
  const wanted = (STAIRS_SHARE - guess) / reach
  const shift = Math.log(wanted / (1 - wanted))
  return guess + reach / (1 + Math.exp(-((levelDb - thresholdDb) / slopeDb + shift)))
}

function levelGrid(): number[] {
  const { least, most, step } = LEVELS_DB
  return Array.from({ length: Math.round((most - least) / step) + 1 }, (_, i) => least + i * step)
}

interface LevelCount {
  readonly levelDb: number
  readonly right: number
  readonly wrong: number
}

/** On stairs the same few levels come again and again. */
function countsByLevel(trials: readonly StairTrial[]): LevelCount[] {
  const counts = new Map<number, LevelCount>()
  for (const { levelDb, right } of trials) {
    const before = counts.get(levelDb) ?? { levelDb, right: 0, wrong: 0 }
    counts.set(levelDb, { levelDb, right: before.right + Number(right), wrong: before.wrong + Number(!right) })
  }
  return [...counts.values()]
}

function logBeliefs(counts: readonly LevelCount[], thresholdDb: number, guess: number): number[] {
  return SLOPES_DB.flatMap((slopeDb) =>
    LAPSES.map((lapse) => {
      let log = 0
      for (const { levelDb, right, wrong } of counts) {
        const share = shareRight(levelDb, { thresholdDb, slopeDb, guess, lapse })
        log += right * Math.log(share) + wrong * Math.log(1 - share)
      }
      return log
    }),
  )
}

/** The level below which so much of the belief lies, with straight lines within a step. */
function levelAt(levels: readonly number[], belief: readonly number[], wanted: number): number {
  let sum = 0
  for (const [i, each] of belief.entries()) {
    if (sum + each >= wanted) return levels[i]! + ((wanted - sum) / each - 0.5) * LEVELS_DB.step
    sum += each
  }
  return levels.at(-1)!
}
