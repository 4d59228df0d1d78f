import { InputError } from '../base/errors'
import type { Samples } from './powerSpectrum'
import { forEachSegment, type SegmentOptions, segmentGrid } from './segments'

/** Levels over time and frequency, with both axes. */
export interface Spectrogram {
  /** Middle of each column, s from the clip's start, rising. */
  readonly timesS: Float64Array
  /** Bin k lies at k·binWidthHz; bins 0 … binCount − 1. */
  readonly binWidthHz: number
  readonly binCount: number
  /** Level of a bin in a column at [column·binCount + bin], dB against full scale squared per hertz, FLOOR at least. */
  readonly levelsDbPerHz: Float32Array
}

/** What a bin without power reads, so that a picture always has a number to paint. */
export const SPECTROGRAM_FLOOR_DB_PER_HZ = -240

/**
 * Power density over time.
 *
 * The levels are ten times the logarithm of SciPy's `signal.spectrogram(…, scaling='density', mode='psd')` with the same
 * window, segment, overlap and detrend. With `maxColumns`, neighbouring segments are averaged in power until there are no
 * more columns than that: nothing is skipped, so a short burst stays in the picture however narrow it is.
 *
 * @param samples The clip; samples after the last full segment are left out.
 * @param options As for `welch`; `maxColumns` ≥ 1 bounds the width.
 * @returns No columns for a clip shorter than a segment.
 * @throws {InputError} segment length, overlap, rate or maxColumns out of range; a sample that is not finite.
 * @example spectrogram(samples, 48000, { segmentLength: 2048, overlap: 0.75, maxColumns: 600 })
 */
export function spectrogram(
  samples: Samples,
  sampleRateHz: number,
  options: SegmentOptions & { readonly maxColumns?: number },
): Spectrogram {
  const { maxColumns = Number.POSITIVE_INFINITY, segmentLength } = options
  if (!(maxColumns >= 1)) throw new InputError(`maxColumns is ${maxColumns}; must be 1 or more`)
  const grid = segmentGrid(samples.length, sampleRateHz, options)
  const perColumn = Math.max(1, Math.ceil(grid.count / maxColumns))
  const columnCount = Math.ceil(grid.count / perColumn)
  const powers = new Float64Array(columnCount * grid.binCount)
  forEachSegment(samples, sampleRateHz, options, (density, index) => {
    const start = Math.floor(index / perColumn) * grid.binCount
    for (let k = 0; k < density.length; k++) powers[start + k]! += density[k]!
  })
  const inColumn = (column: number) => Math.min(perColumn, grid.count - column * perColumn)
  const timesS = Float64Array.from({ length: columnCount }, (_, column) => {
    const middleSegment = column * perColumn + (inColumn(column) - 1) / 2
    return (middleSegment * grid.hopSamples + segmentLength / 2) / sampleRateHz
  })
  const levelsDbPerHz = Float32Array.from(powers, (sum, i) => {
    return Math.max(SPECTROGRAM_FLOOR_DB_PER_HZ, 10 * Math.log10(sum / inColumn(Math.floor(i / grid.binCount))))
  })
  return { timesS, binWidthHz: grid.binWidthHz, binCount: grid.binCount, levelsDbPerHz }
}
