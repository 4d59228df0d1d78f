import { InputError } from '../../base/errors'
import { median } from '../../base/statistics'

/** A median and where the true one lies. */
export interface MedianInterval {
  readonly median: number
  readonly low: number
  readonly high: number
  /** What the interval is worth, 0 to 1; less than asked where there are too few values. */
  readonly confidence: number
}

/**
 * A median with an interval that supposes nothing of the distribution: the order statistics r and n+1−r hold the median
 * with P(r ≤ B ≤ n−r), B binomial of n and one half.
 *
 * @param values At least one, finite.
 * @throws {InputError} no values.
 * @see Conover 1999, section 3.2. [Conover1999]
 * @example medianInterval([1, 2, 3, 4, 5, 6, 7, 8, 9]) // 5, from 2 to 8: 96 %
 */
export function medianInterval(values: readonly number[], confidence = 0.95): MedianInterval {
  if (values.length === 0) throw new InputError('median of no values')
  const sorted = [...values].sort((a, b) => a - b)
  const n = sorted.length
  let below = 0.5 ** n // P(B < r) for r = 1
  let chance = below
  let r = 1
  while (r + 1 <= (n + 1) / 2) {
    chance = (chance * (n - r + 1)) / r
    if (1 - 2 * (below + chance) < confidence) break
    below += chance
    r++
  }
  return { median: median(sorted), low: sorted[r - 1]!, high: sorted[n - r]!, confidence: 1 - 2 * below }
}
