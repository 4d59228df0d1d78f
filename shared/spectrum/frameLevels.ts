import { chiSquaredOverDofQuantile, quantileOfSorted } from '../base/statistics'

/** Powers of one band over the frames of a clip, each corrected so that steady Gaussian noise reads its mean. */
export interface FrameLevels {
  readonly quietPower: number
  readonly busyPower: number
  readonly steadyPower: number
}

const QUIET_SHARE = 0.2 // chosen: four fifths of a clip may be disturbed and the floor still shows
const BUSY_SHARE = 0.85 // chosen: a gurgle that is on for more than 15 % of a clip reads in full
const LOUD_RATIO = 3 // chosen: 1 % of the frames of the narrowest bands pass it in steady noise, none in wide ones
const LEFT_OUT_SHARE = 0.1 // chosen: two footsteps in 6 s; a gurgle on for 30 % of the clip loses 1.3 dB
const LEFT_OUT_MOST = 0.25 // chosen: in a short clip one knock is more than a tenth, yet never more than this
const KNOCK_S = 0.15 // chosen: a footstep; it reaches into every frame that begins less than a frame before it
const FEWEST_FRAMES = 4

/**
 * Quiet, busy and steady level of a band.
 *
 * Quiet is the 20th percentile of the frames' powers and busy the 85th, each over the same quantile of the chi-squared
 * distribution that the band's power in a frame follows in steady noise.
 *
 * Steady is the mean of the frames that are not exceptions. An exception is more than three times as strong as the
 * typical frame (the median, corrected); the strongest are left out first and never more than a tenth of them, or as many
 * as one footstep touches in a short clip. So one footstep leaves it within a few tenths of a decibel, nothing at all is cut from a steady
 * sound (a plain trimmed mean would cut, and its correction would lean on the noise being Gaussian), and a sound that
 * keeps coming back for more than a tenth of the time stays in. Frames that somebody vouches for are never left out: the
 * ring of a bubble is as brief as a knock and is what is listened for.
 *
 * @param powers Mean square of the band in each frame, ≥ 0, in order of time.
 * @param degreesOfFreedom Of one frame's power, > 2.
 * @param timing Length of a frame and of the clip, s.
 * @param vouched 1 for each frame that is no exception however loud; `null`: none.
 * @returns `null` with fewer than 4 frames.
 */
export function frameLevels(
  powers: Float64Array,
  degreesOfFreedom: number,
  timing: { readonly frameS: number; readonly durationS: number },
  vouched: Uint8Array | null = null,
): FrameLevels | null {
  const count = powers.length
  if (count < FEWEST_FRAMES) return null
  const sorted = powers.slice().sort()
  const unbiased = (share: number) => {
    // The rank that type 7 picks lies, in expectation, at this probability of a sample of `count`.
    const probability = ((count - 1) * share + 1) / (count + 1)
    return quantileOfSorted(sorted, share) / chiSquaredOverDofQuantile(probability, degreesOfFreedom)
  }
  const knockShare = (KNOCK_S + timing.frameS) / timing.durationS
  const leftOutShare = Math.min(LEFT_OUT_MOST, Math.max(LEFT_OUT_SHARE, knockShare))
  return {
    quietPower: unbiased(QUIET_SHARE),
    busyPower: unbiased(BUSY_SHARE),
    steadyPower: steadyPower(vouched === null ? sorted : lastUnvouched(powers, vouched), {
      loud: LOUD_RATIO * unbiased(0.5),
      leftOutShare,
      degreesOfFreedom,
    }),
  }
}

/** Vouched frames first in any order, then the others in rising order, so that exceptions stand at the end. */
function lastUnvouched(powers: Float64Array, vouched: Uint8Array): Float64Array {
  const others = powers.filter((_, i) => vouched[i] === 0).sort()
  const ordered = new Float64Array(powers.length)
  ordered.set(powers.filter((_, i) => vouched[i] === 1))
  ordered.set(others, powers.length - others.length)
  return ordered
}

function steadyPower(
  ordered: Float64Array,
  limits: { readonly loud: number; readonly leftOutShare: number; readonly degreesOfFreedom: number },
): number {
  const most = Math.ceil(ordered.length * limits.leftOutShare)
  let kept = ordered.length
  while (kept > 1 && ordered.length - kept < most && ordered[kept - 1]! > limits.loud) kept--
  let sum = 0
  for (let i = 0; i < kept; i++) sum += ordered[i]!
  return sum / kept / meanBelow(LOUD_RATIO, limits.degreesOfFreedom)
}

/**
 * Mean of a chi-squared variable over its degrees of freedom, given that it lies below `ratio`.
 *
 * In Wilson and Hilferty's cube-root form, integrated over the tail above: (1 − tail mean) / (1 − tail mass).
 *
 * @see Wilson & Hilferty 1931. [WilsonHilferty1931] in shared/base/sources.ts
 */
function meanBelow(ratio: number, degreesOfFreedom: number): number {
  const k = 2 / (9 * degreesOfFreedom)
  const zStart = (Math.cbrt(ratio) - (1 - k)) / Math.sqrt(k)
  const step = 0.125
  let mass = 0
  let mean = 0
  for (let z = zStart + step / 2; z < Math.min(zStart + 4, 8); z += step) {
    const density = (step * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)
    mass += density
    mean += density * (1 - k + z * Math.sqrt(k)) ** 3
  }
  return (1 - mean) / (1 - mass)
}
