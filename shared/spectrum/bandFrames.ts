import { type BandShares, bandShares } from './bandShares'
import { transformOfSize, transformSizeFor } from './powerSpectrum'
import type { ThirdOctaveBand } from './thirdOctaveBands'
import { windowPower, windowSamples } from './windows'

/** Powers of bands in the frames of one clip. */
export interface BandFrames {
  /** One array a band, one mean square a frame, in order of time; empty when the clip is shorter than a frame. */
  readonly powers: readonly Float64Array[]
  /** Degrees of freedom of each band's power in one frame, were the sound steady Gaussian noise. */
  readonly degreesOfFreedom: readonly number[]
  /** Time from one frame to the next, s; 0 with fewer than two frames. */
  readonly hopS: number
}

/**
 * Power of each band in each of a row of Hann frames that overlap by half or a little more.
 *
 * The frames are spread evenly so that the first begins with the clip and the last ends with it: a short clip is used
 * to its end. A frame that is no power of two is padded with zeros, which changes the bins and not the bands. Two frames
 * go through one complex transform as its real and imaginary part and are told apart by symmetry, at half the cost.
 *
 * @param samples At `sampleRateHz`.
 * @param bands Bands whose upper edge lies below half the rate.
 * @param frameS Length of a frame in s; its bin is 1/frameS wide.
 */
export function bandFrames(
  samples: Float32Array,
  sampleRateHz: number,
  bands: readonly ThirdOctaveBand[],
  frameS: number,
): BandFrames {
  const frameLength = 2 * Math.round((sampleRateHz * frameS) / 2)
  const size = transformSizeFor(frameLength)
  const shares = bands.map((band) => bandShares(band, sampleRateHz / size))
  const count = samples.length < frameLength ? 0 : frameCount(samples.length / sampleRateHz, frameS)
  const step = count > 1 ? (samples.length - frameLength) / (count - 1) : 0
  const powers = bands.map(() => new Float64Array(count))
  const window = windowSamples('hann', frameLength)
  const transform = transformOfSize(size)
  const input = new Float64Array(2 * size)
  const output = new Float64Array(2 * size)
  const scale = 2 / (size * windowPower(window))
  for (let frame = 0; frame < count; frame += 2) {
    const start = Math.round(frame * step)
    const pairStart = frame + 1 < count ? Math.round((frame + 1) * step) : start
    windowPair(input, samples, window, start, pairStart)
    transform.complex(output, input)
    for (let b = 0; b < bands.length; b++) pairPowers(powers[b]!, frame, output, shares[b]!, scale)
  }
  return {
    powers,
    degreesOfFreedom: shares.map((s) => degreesOfFreedom(s, frameLength / size)),
    hopS: step / sampleRateHz,
  }
}

/**
 * Counted in seconds and at half overlap or a hair less, so that the rounding of frames and clips to whole samples does
 * not give one rate a frame more than another.
 */
function frameCount(durationS: number, frameS: number): number {
  return Math.max(0, Math.ceil((2 * (durationS - frameS)) / frameS - 0.05)) + 1
}

function windowPair(input: Float64Array, samples: Float32Array, window: Float64Array, a: number, b: number): void {
  for (let n = 0; n < window.length; n++) {
    const w = window[n]!
    input[2 * n] = w * samples[a + n]!
    input[2 * n + 1] = w * samples[b + n]!
  }
}

/**
 * Band power of both frames of a pair: with Z the transform of a + i·b, A[k] = (Z[k] + Z*[−k])/2 and
 * B[k] = (Z[k] − Z*[−k])/2i. The last frame of an odd count is its own partner and is written once.
 */
function pairPowers(into: Float64Array, frame: number, z: Float64Array, band: BandShares, scale: number): void {
  const { firstBin, shares } = band
  let a = 0
  let b = 0
  for (let i = 0, k = 2 * firstBin, mirror = z.length - k; i < shares.length; i++, k += 2, mirror -= 2) {
    const share = shares[i]!
    const evenRe = z[k]! + z[mirror]!
    const oddIm = z[k + 1]! - z[mirror + 1]!
    const evenIm = z[k + 1]! + z[mirror + 1]!
    const oddRe = z[k]! - z[mirror]!
    a += share * (evenRe * evenRe + oddIm * oddIm)
    b += share * (evenIm * evenIm + oddRe * oddRe)
  }
  into[frame] = (a * scale) / 4
  if (frame + 1 < into.length) into[frame + 1] = (b * scale) / 4
}

/**
 * Degrees of freedom of a band's power in one Hann frame of white noise: a chi-squared variable of as many has the same
 * relative variance.
 *
 *     ν = 2·(Σ s)² / Σ Σ s[j]·s[k]·ρ(j − k),   ρ(m) = |Σ w²·exp(−2πi·m·n/N)|² / (Σ w²)²
 *
 * @param padding Frame length over transform size, ½ to 1: padded bins are nearer to each other.
 */
function degreesOfFreedom(band: BandShares, padding: number): number {
  const { shares } = band
  const reach = Math.ceil(3 / padding) // beyond three true bins the correlation is below 1e-3
  const correlation = Float64Array.from({ length: reach + 1 }, (_, m) => hannBinCorrelation(m * padding))
  let sum = 0
  let spread = 0
  for (let j = 0; j < shares.length; j++) {
    sum += shares[j]!
    for (let k = Math.max(0, j - reach); k <= Math.min(shares.length - 1, j + reach); k++) {
      spread += shares[j]! * shares[k]! * correlation[Math.abs(j - k)]!
    }
  }
  return (2 * sum * sum) / spread
}

/** Correlation of the powers of two Hann bins `x` true bins apart: 4/9 at 1, 1/36 at 2, 0 at 3 and on. */
function hannBinCorrelation(x: number): number {
  const sinc = (u: number) => (u === 0 ? 1 : Math.sin(Math.PI * u) / (Math.PI * u))
  const squaredHann = (3 / 8) * sinc(x) + (1 / 4) * (sinc(x - 1) + sinc(x + 1)) + (1 / 16) * (sinc(x - 2) + sinc(x + 2))
  return (squaredHann / (3 / 8)) ** 2
}
