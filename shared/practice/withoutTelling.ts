import type { Ring } from '../bubbles/ring'
import type { StandingOut } from '../evidence/bandsOverFloor'
import { transformOfSize } from '../spectrum/powerSpectrum'
import { windowSamples } from '../spectrum/windows'

/** Frames of about 32 ms, four to a frame's length; by so much what tells is taken down, dB. Chosen by ear. */
const FRAME_S = 0.032
const OVERLAP = 4
const CUT = 10 ** (-30 / 20)
/** A ring is taken out from just before its onset until it has died away, this far round its pitch. Chosen. */
const RING_BEFORE_S = 0.01
const RING_DECAYS = 5
const RING_REACH = 0.12

export interface Telling {
  readonly bands: readonly Pick<StandingOut, 'lowHz' | 'highHz'>[]
  readonly rings: readonly Ring[]
}

/**
 * A clip without the bands and rings that told: to be heard against the clip itself. Short frames are transformed, what
 * told is taken down by 30 dB, and the frames are put together again; where nothing told the clip stays as it is.
 *
 * @returns As many samples as came in.
 * @see Allen 1977, overlap-add of short-time spectra. [Allen1977] in shared/base/sources.ts
 */
export function withoutTelling(
  samples: Float32Array,
  sampleRateHz: number,
  telling: Telling,
): Float32Array<ArrayBuffer> {
  const size = 2 ** Math.round(Math.log2(FRAME_S * sampleRateHz))
  const hop = size / OVERLAP
  const window = windowSamples('hann', size)
  const transform = transformOfSize(size)
  const input = new Float64Array(2 * size)
  const spectrum = new Float64Array(2 * size)
  const sum = new Float64Array(samples.length)
  const weight = new Float64Array(samples.length)
  for (let from = hop - size; from < samples.length; from += hop) {
    for (let n = 0; n < size; n++) input[2 * n] = (samples[from + n] ?? 0) * window[n]!
    input.forEach((_, i) => {
      if (i % 2 === 1) input[i] = 0
    })
    transform.complex(spectrum, input)
    const [startS, endS] = [from / sampleRateHz, (from + size) / sampleRateHz]
    for (let k = 0; k <= size / 2; k++) {
      if (!isTelling((k * sampleRateHz) / size, startS, endS, telling)) continue
      for (const at of k === 0 || k === size / 2 ? [k] : [k, size - k]) {
        spectrum[2 * at]! *= CUT
        spectrum[2 * at + 1]! *= CUT
      }
    }
    transform.inverse(input, spectrum)
    for (let n = Math.max(0, -from); n < size && from + n < samples.length; n++) {
      sum[from + n]! += input[2 * n]! * window[n]!
      weight[from + n]! += window[n]! ** 2
    }
  }
  return Float32Array.from(samples, (_, n) => (weight[n]! > 1e-9 ? sum[n]! / weight[n]! : 0))
}

function isTelling(hz: number, startS: number, endS: number, { bands, rings }: Telling): boolean {
  if (bands.some(({ lowHz, highHz }) => hz >= lowHz && hz <= highHz)) return true
  return rings.some(
    ({ timeS, pitchHz, decayS }) =>
      Math.abs(hz / pitchHz - 1) <= RING_REACH && endS > timeS - RING_BEFORE_S && startS < timeS + RING_DECAYS * decayS,
  )
}
