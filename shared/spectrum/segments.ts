import { InputError } from '../base/errors'
import { mustBeFinite, oneSidedPower, type Samples, transformOfSize, transformSizeFor } from './powerSpectrum'
import { type WindowName, windowPower, windowSamples } from './windows'

/** How a clip is cut into segments for an averaged or a running spectrum. */
export interface SegmentOptions {
  /** In samples, at least 2; padded with zeros to the next power of two. */
  readonly segmentLength: number
  /** Share of a segment that the next one repeats, 0 to below 1; half unless said. */
  readonly overlap?: number
  /** Hann unless said. */
  readonly window?: WindowName
  /** `constant` (unless said) takes each segment's mean away before the window. */
  readonly detrend?: 'constant' | 'none'
}

/** Where the segments lie and how their bins read. */
export interface SegmentGrid {
  readonly count: number
  readonly hopSamples: number
  readonly binCount: number
  readonly binWidthHz: number
}

/**
 * Lays segments over a clip. The last samples that do not fill a segment are left out.
 *
 * @returns `count` is 0 when the clip is shorter than a segment.
 * @throws {InputError} segment length, overlap or rate out of range.
 */
export function segmentGrid(sampleCount: number, sampleRateHz: number, options: SegmentOptions): SegmentGrid {
  const { segmentLength, overlap = 0.5 } = options
  if (!(sampleRateHz > 0)) throw new InputError(`sampleRateHz is ${sampleRateHz}; must be above 0`)
  if (!(Number.isInteger(segmentLength) && segmentLength >= 2)) {
    throw new InputError(`segmentLength is ${segmentLength}; must be a whole number of 2 or more`)
  }
  if (!(overlap >= 0 && overlap < 1)) throw new InputError(`overlap is ${overlap}; must be 0 to below 1`)
  const hopSamples = segmentLength - Math.min(Math.floor(segmentLength * overlap), segmentLength - 1)
  const size = transformSizeFor(segmentLength)
  return {
    count: sampleCount < segmentLength ? 0 : Math.floor((sampleCount - segmentLength) / hopSamples) + 1,
    hopSamples,
    binCount: size / 2 + 1,
    binWidthHz: sampleRateHz / size,
  }
}

/**
 * Calls `visit` with the one-sided power density of each segment in turn, full scale squared per hertz.
 *
 * The array handed to `visit` is the same each time: take out of it what is needed.
 *
 * @throws {InputError} segment length, overlap or rate out of range; a sample that is not finite.
 */
export function forEachSegment(
  samples: Samples,
  sampleRateHz: number,
  options: SegmentOptions,
  visit: (density: Float64Array, index: number) => void,
): SegmentGrid {
  const grid = segmentGrid(samples.length, sampleRateHz, options)
  const { segmentLength, detrend = 'constant' } = options
  const window = windowSamples(options.window ?? 'hann', segmentLength)
  const transform = transformOfSize(transformSizeFor(segmentLength))
  const input = new Float64Array(transform.size)
  const output = new Float64Array(2 * transform.size)
  const density = new Float64Array(grid.binCount)
  const scale = 1 / (sampleRateHz * windowPower(window))
  for (let index = 0; index < grid.count; index++) {
    const start = index * grid.hopSamples
    const mean = detrend === 'constant' ? meanOf(samples, start, segmentLength) : 0
    for (let n = 0; n < segmentLength; n++) input[n] = (samples[start + n]! - mean) * window[n]!
    transform.real(output, input)
    oneSidedPower(density, output, scale)
    mustBeFinite(density, start)
    visit(density, index)
  }
  return grid
}

function meanOf(samples: Samples, start: number, length: number): number {
  let sum = 0
  for (let n = start; n < start + length; n++) sum += samples[n]!
  return sum / length
}
