/** A peak between the bins. */
export interface Peak {
  /** Distance from the middle bin, −0.5 to 0.5 when the middle one is the highest. */
  readonly offsetBins: number
  /** Height of the parabola's top, in the unit of the three levels. */
  readonly level: number
}

/**
 * Top of the parabola through three neighbouring levels.
 *
 *     offset = ½·(a − c)/(a − 2b + c),   top = b − ¼·(a − c)·offset
 *
 * On levels in dB it is exact for a Gaussian peak and within a few hundredths of a bin for a Hann one.
 *
 * @param before Level one bin below. @param middle The highest of the three. @param after Level one bin above.
 * @returns `null` when the three lie on a straight line or open upwards: there is no top.
 * @example parabolicPeak(-6, 0, -4) // { offsetBins: 0.1, level: 0.05 }
 */
export function parabolicPeak(before: number, middle: number, after: number): Peak | null {
  const bend = before - 2 * middle + after
  if (!(bend < 0)) return null
  const offsetBins = (0.5 * (before - after)) / bend
  return { offsetBins, level: middle - 0.25 * (before - after) * offsetBins }
}
