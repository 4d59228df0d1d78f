import { InputError } from '../base/errors'

/** Which bins make up a band, and how much of each. */
export interface BandShares {
  readonly firstBin: number
  /** Share of each bin from `firstBin` on that lies in the band, 0 to 1; their sum is the band's width in bins. */
  readonly shares: Float64Array
}

/**
 * The bins of a band: a bin is the interval half a bin to each side of its frequency, and a bin that an edge cuts is
 * shared out in proportion, so that bands that touch lose nothing and count nothing twice.
 *
 * @param band Edges in Hz, 0 < lower < upper, the upper below half the sample rate.
 * @param binWidthHz > 0.
 * @throws {InputError} edges or bin width out of order.
 */
export function bandShares(band: { lowerHz: number; upperHz: number }, binWidthHz: number): BandShares {
  const lower = band.lowerHz / binWidthHz
  const upper = band.upperHz / binWidthHz
  if (!(lower > 0 && lower < upper && upper < Number.POSITIVE_INFINITY)) {
    throw new InputError(`band ${band.lowerHz} to ${band.upperHz} Hz in bins of ${binWidthHz} Hz is out of order`)
  }
  const firstBin = Math.round(lower)
  const length = Math.round(upper) - firstBin + 1
  const shares = Float64Array.from({ length }, (_, i) => {
    const bin = firstBin + i
    return Math.max(0, Math.min(bin + 0.5, upper) - Math.max(bin - 0.5, lower))
  })
  return { firstBin, shares }
}
