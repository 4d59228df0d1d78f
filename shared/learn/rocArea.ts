import { InputError } from '../base/errors'

/** Area under the receiver's curve. */
export interface RocArea {
  /** Chance that a leak scores above what is none, ties half: 0.5 by chance, 1 perfect. */
  readonly area: number
  readonly standardError: number
  /** 95 %, cut at 0 and 1. */
  readonly low: number
  readonly high: number
  readonly leaks: number
  readonly others: number
}

/** Of a normal, for 95 %. */
const Z95 = 1.959964

/**
 * Area under the ROC curve with Hanley and McNeil's standard error:
 *
 *     SE² = [A(1 − A) + (n₁ − 1)(Q₁ − A²) + (n₀ − 1)(Q₂ − A²)]/(n₁·n₀),   Q₁ = A/(2 − A),   Q₂ = 2A²/(1 + A)
 *
 * @param scores One a clip, the higher the more like a leak. @param isLeak One a clip; both classes present.
 * @throws {InputError} one class only, or lists of different length.
 * @see Hanley & McNeil 1982. [HanleyMcNeil1982]
 */
export function rocArea(scores: readonly number[], isLeak: readonly boolean[]): RocArea {
  const leaks = isLeak.filter((leak) => leak).length
  const others = isLeak.length - leaks
  if (scores.length !== isLeak.length) throw new InputError(`${scores.length} scores with ${isLeak.length} labels`)
  if (leaks === 0 || others === 0) throw new InputError('labels are of one class only; both are needed')
  const area = (rankSum(scores, isLeak) - (leaks * (leaks + 1)) / 2) / (leaks * others)
  const q1 = area / (2 - area)
  const q2 = (2 * area * area) / (1 + area)
  const spread = area * (1 - area) + (leaks - 1) * (q1 - area * area) + (others - 1) * (q2 - area * area)
  const standardError = Math.sqrt(Math.max(0, spread) / (leaks * others))
  return {
    area,
    standardError,
    low: Math.max(0, area - Z95 * standardError),
    high: Math.min(1, area + Z95 * standardError),
    leaks,
    others,
  }
}

/** Sum of the ranks of the leaks, equal scores sharing theirs. */
function rankSum(scores: readonly number[], isLeak: readonly boolean[]): number {
  const order = scores.map((_, i) => i).sort((a, b) => scores[a]! - scores[b]!)
  let sum = 0
  for (let from = 0; from < order.length; ) {
    let to = from
    while (to < order.length && scores[order[to]!] === scores[order[from]!]) to++
    const rank = (from + 1 + to) / 2
    for (let i = from; i < to; i++) if (isLeak[order[i]!]) sum += rank
    from = to
  }
  return sum
}
