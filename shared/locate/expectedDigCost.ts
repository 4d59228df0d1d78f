import type { LocateAnswer } from './answer'

/**
 * What opening pieces of a line in the given order is expected to cost: each piece is paid for only when those before
 * it did not hold the leak.
 *
 *     Σ cost[i]·(1 − Σ_{j<i} probability[j])
 *
 * @returns In the unit of the costs; `null` where any piece has no cost.
 * @example expectedDigCost of (probability, cost) = (0.2, 1), (0.3, 3), (0.5, 10) is 8.4
 */
export function expectedDigCost(pieces: readonly LocateAnswer['digFirst'][number][]): number | null {
  let left = 1
  let sum = 0
  for (const { probability, cost } of pieces) {
    if (cost === null) return null
    sum += cost * left
    left = Math.max(0, left - probability)
  }
  return sum
}
