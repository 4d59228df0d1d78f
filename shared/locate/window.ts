/**
 * Shortest single interval that holds a share of a density given on an even grid, with linear density between grid
 * places and the ends found to a fraction of a step.
 *
 * @param alongM  Even grid, rising, at least 2 places, m.
 * @param perM    Density, ≥ 0, not all 0; any scale.
 * @param share   0 to 1.
 * @returns Its two ends, m.
 */
export function shortestWindow(alongM: ArrayLike<number>, perM: ArrayLike<number>, share: number): [number, number] {
  const cumulative = cumulativeOf(alongM, perM)
  const total = cumulative[cumulative.length - 1]!
  let best: [number, number] = [alongM[0]!, alongM[alongM.length - 1]!]
  const consider = (low: number, high: number) => {
    if (high - low < best[1] - best[0] - 1e-12) best = [low, high]
  }
  for (let i = 0; i < alongM.length; i++) {
    const below = cumulative[i]! / total
    if (below + share <= 1) consider(alongM[i]!, placeAt(alongM, cumulative, (below + share) * total))
    if (below >= share) consider(placeAt(alongM, cumulative, (below - share) * total), alongM[i]!)
  }
  return best
}

/** Place below which a share of a density lies: the median for 0.5. Same grid and density as `shortestWindow`. */
export function densityQuantile(alongM: ArrayLike<number>, perM: ArrayLike<number>, share: number): number {
  const cumulative = cumulativeOf(alongM, perM)
  return placeAt(alongM, cumulative, share * cumulative[cumulative.length - 1]!)
}

/** Integral of the density from the first place to each (trapezoids). */
export function cumulativeOf(alongM: ArrayLike<number>, perM: ArrayLike<number>): Float64Array {
  const cumulative = new Float64Array(alongM.length)
  for (let i = 1; i < alongM.length; i++) {
    cumulative[i] = cumulative[i - 1]! + 0.5 * (perM[i]! + perM[i - 1]!) * (alongM[i]! - alongM[i - 1]!)
  }
  return cumulative
}

/** Integral of the density from `low` to `high`, m. */
export function massBetween(alongM: ArrayLike<number>, perM: ArrayLike<number>, low: number, high: number): number {
  const cumulative = cumulativeOf(alongM, perM)
  return massUpTo(alongM, cumulative, high) - massUpTo(alongM, cumulative, low)
}

/** Integral of the density from the first place to `along`, m, from what `cumulativeOf` gives. */
export function massUpTo(alongM: ArrayLike<number>, cumulative: Float64Array, along: number): number {
  const last = alongM.length - 1
  if (along <= alongM[0]!) return 0
  if (along >= alongM[last]!) return cumulative[last]!
  const step = (alongM[last]! - alongM[0]!) / last
  const at = Math.min(last - 1, Math.floor((along - alongM[0]!) / step))
  const part = (along - alongM[at]!) / (alongM[at + 1]! - alongM[at]!)
  return cumulative[at]! + part * (cumulative[at + 1]! - cumulative[at]!)
}

function placeAt(alongM: ArrayLike<number>, cumulative: Float64Array, mass: number): number {
  let low = 0
  let high = cumulative.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (cumulative[middle]! <= mass) low = middle
    else high = middle
  }
  const inside = cumulative[high]! - cumulative[low]!
  const part = inside > 0 ? Math.min(1, Math.max(0, (mass - cumulative[low]!) / inside)) : 0
  return alongM[low]! + part * (alongM[high]! - alongM[low]!)
}
