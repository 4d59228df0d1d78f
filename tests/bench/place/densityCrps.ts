/** Three places and weights of Gauss and Legendre on 0 to 1: exact up to the fifth power, and a squared F has the fourth. */
const NODES = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const

/**
 * Continuous ranked probability score of a density given on a grid, in the grid's unit; straight lines between places.
 *
 *     ∫ (F(x) − [x ≥ truth])² dx
 *
 * A density on one place scores its distance from the truth.
 *
 * @param alongM Rising, at least two places. @param perM ≥ 0, any scale.
 * @returns `null` for a density that is nowhere above 0.
 * @see Gneiting & Raftery 2007, section 4.2. [GneitingRaftery2007] in shared/base/sources.ts
 */
export function densityCrps(alongM: readonly number[], perM: readonly number[], truth: number): number | null {
  const total = alongM.reduce((sum, _, i) => (i === 0 ? 0 : sum + massOf(alongM, perM, i)), 0)
  if (!(total > 0)) return null
  const last = alongM[alongM.length - 1]!
  let score = Math.max(alongM[0]! - truth, truth - last, 0)
  let below = 0
  for (let i = 1; i < alongM.length; i++) {
    const from = alongM[i - 1]!
    const cut = Math.min(Math.max(truth, from), alongM[i]!)
    const slope = (perM[i]! - perM[i - 1]!) / (alongM[i]! - from)
    const upTo = (x: number) => (below + (perM[i - 1]! + (slope * (x - from)) / 2) * (x - from)) / total
    score += squared(from, cut, (x) => upTo(x)) + squared(cut, alongM[i]!, (x) => upTo(x) - 1)
    below += massOf(alongM, perM, i)
  }
  return score
}

function massOf(alongM: readonly number[], perM: readonly number[], i: number): number {
  return 0.5 * (perM[i]! + perM[i - 1]!) * (alongM[i]! - alongM[i - 1]!)
}

function squared(from: number, to: number, of: (x: number) => number): number {
  if (!(to > from)) return 0
  return (to - from) * NODES.reduce((sum, [place, weight]) => sum + weight * of(from + place * (to - from)) ** 2, 0)
}
