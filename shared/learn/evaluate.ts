import { brierScore, calibrationCurve } from './calibration'
import type { Example } from './example'
import type { CoverFigures, Evaluation } from './model'
import { countAt, operatingPoint } from './operatingPoint'
import { rocArea } from './rocArea'

/** A labelled clip with the probability that a detector gave it. */
export interface ScoredExample {
  readonly example: Pick<Example, 'isLeak' | 'cover'>
  readonly probability: number
}

/**
 * What scores are worth.
 *
 * @param where A threshold, or the share of leaks that may be missed, 0 to 1, which sets one.
 * @throws {InputError} one class only.
 */
export function evaluate(
  scored: readonly ScoredExample[],
  keptApart: Evaluation['keptApart'],
  where: { readonly threshold: number } | { readonly missShare: number },
): Evaluation {
  const probability = scored.map((each) => each.probability)
  const isLeak = scored.map(({ example }) => example.isLeak)
  const atMiss =
    'threshold' in where
      ? countAt(probability, isLeak, where.threshold)
      : operatingPoint(probability, isLeak, where.missShare)
  return {
    keptApart,
    clips: scored.length,
    area: rocArea(probability, isLeak),
    brier: brierScore(probability, isLeak),
    calibration: calibrationCurve(probability, isLeak),
    atMiss,
    byCover: [...new Set(scored.map(({ example }) => example.cover))]
      .sort()
      .map((cover) => coverFigures(scored, cover, atMiss.threshold)),
  }
}

function coverFigures(scored: readonly ScoredExample[], cover: string, threshold: number): CoverFigures {
  const under = scored.filter(({ example }) => example.cover === cover)
  const probability = under.map((each) => each.probability)
  const isLeak = under.map(({ example }) => example.isLeak)
  const hasBoth = isLeak.includes(true) && isLeak.includes(false)
  return {
    cover,
    counts: countAt(probability, isLeak, threshold),
    area: hasBoth ? rocArea(probability, isLeak) : null,
  }
}
