import type { Samples } from './powerSpectrum'
import { forEachSegment, type SegmentOptions } from './segments'

/** An averaged power density. */
export interface PowerDensity {
  /** One-sided, full scale squared per hertz (mean square of 1 over the whole band is 0 dBFS), bins 0 … N/2. */
  readonly density: Float64Array
  /** Bin k lies at k·binWidthHz. */
  readonly binWidthHz: number
  /** Segments that were averaged, 1 or more. */
  readonly segmentCount: number
}

/**
 * One-sided power spectral density by Welch's method: the mean of windowed, overlapped periodograms.
 *
 *     S[k] = c/(fs·Σw²) · mean over segments of |Σ w[n]·(x[n] − mean)·exp(−2πi·k·n/N)|²,   c = 2 between DC and Nyquist
 *
 * The same numbers as SciPy's `signal.welch(x, fs, window, nperseg, noverlap, nfft=next power of two, detrend)`.
 *
 * @param samples The clip; samples after the last full segment are left out.
 * @returns The density; its sum times the bin width is the mean square. `null` for a clip shorter than a segment.
 * @throws {InputError} segment length, overlap or rate out of range; a sample that is not finite.
 * @see Welch 1967. [Welch1967] in shared/base/sources.ts
 * @example welch(samples, 48000, { segmentLength: 4096 })?.density
 */
export function welch(samples: Samples, sampleRateHz: number, options: SegmentOptions): PowerDensity | null {
  let total: Float64Array | null = null
  const grid = forEachSegment(samples, sampleRateHz, options, (density) => {
    total ??= new Float64Array(density.length)
    for (let k = 0; k < density.length; k++) total[k]! += density[k]!
  })
  if (total === null) return null
  const density = (total as Float64Array).map((sum) => sum / grid.count)
  return { density, binWidthHz: grid.binWidthHz, segmentCount: grid.count }
}
