import { InputError } from '../base/errors'
import type { Samples } from './powerSpectrum'
import { forEachSegment, type SegmentOptions } from './segments'

/** How unsteady each bin is over the segments of a clip. */
export interface SpectralKurtosis {
  /**
   * Bin k lies at k·binWidthHz. About 0 for steady Gaussian noise (standard deviation about 2/√segmentCount), −1 for a
   * constant tone, 2/q − 2 for noise that is on for a share q of the time. `null` for a bin without power and at DC and
   * Nyquist, where the transform is real and the figure does not apply.
   */
  readonly values: readonly (number | null)[]
  readonly binWidthHz: number
  readonly segmentCount: number
}

/**
 * Spectral kurtosis, unbiased for steady Gaussian noise.
 *
 *     SK = K/(K−1) · [ (K+1)·Σ|X|⁴ / (Σ|X|²)² − 2 ],   sums over the K segments
 *
 * Segments that overlap are not independent; without overlap the stated figures hold (`overlap` is 0 unless said).
 *
 * @param samples The clip.
 * @returns `null` for a clip of fewer than two segments.
 * @throws {InputError} segment length, overlap or rate out of range; a sample that is not finite.
 * @see Antoni 2006. [Antoni2006] in shared/base/sources.ts
 */
export function spectralKurtosis(
  samples: Samples,
  sampleRateHz: number,
  options: SegmentOptions,
): SpectralKurtosis | null {
  if (options.segmentLength < 4) throw new InputError(`segmentLength is ${options.segmentLength}; must be 4 or more`)
  let second = new Float64Array(0)
  let fourth = new Float64Array(0)
  const grid = forEachSegment(samples, sampleRateHz, { overlap: 0, ...options }, (density, index) => {
    if (index === 0) {
      second = new Float64Array(density.length)
      fourth = new Float64Array(density.length)
    }
    for (let k = 0; k < density.length; k++) {
      const power = density[k]!
      second[k]! += power
      fourth[k]! += power * power
    }
  })
  const count = grid.count
  if (count < 2) return null
  const values = Array.from(second, (sum, k) => {
    if (sum === 0 || k === 0 || k === second.length - 1) return null
    return (count / (count - 1)) * (((count + 1) * fourth[k]!) / (sum * sum) - 2)
  })
  return { values, binWidthHz: grid.binWidthHz, segmentCount: count }
}
