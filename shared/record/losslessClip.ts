import type { Clip } from '../audio/clip'
import type { WrittenEncoding } from '../audio/encodeSamples'

/** Samples as they are to be written, without any loss. */
export interface LosslessClip {
  readonly clip: Clip
  readonly encoding: WrittenEncoding
  readonly bits: 16 | 24 | 32
}

/**
 * The depth at which a recording is kept: the least that holds what the microphone gave.
 *
 * A microphone of 16 or 24 bits comes as floating samples k/2^(bits-1). Some browsers turn the positive ones of 16 bits
 * into k/32 767 instead, so that full scale is 1; the whole numbers k are found again, and the clip holds the very
 * numbers that were captured. Anything else (resampled on the way, or captured in floating point) is kept as 32-bit
 * floats, as it came. Channels that are all the same are kept once.
 *
 * @param channels One array a channel, at least one, all of one length. Not changed.
 */
export function losslessClip(channels: readonly Float32Array[], sampleRateHz: number): LosslessClip {
  const kept = areSame(channels) ? channels.slice(0, 1) : channels
  const even = kept.every((samples) => liesOnGrid(samples, 2 ** 15)) ? kept : kept.map(capturedSteps)
  if (even.every((samples) => samples !== null)) {
    return { clip: clipOf(even, sampleRateHz, 'pcm', 16), encoding: 'pcm16', bits: 16 }
  }
  if (kept.every((samples) => liesOnGrid(samples, 2 ** 23))) {
    return { clip: clipOf(kept, sampleRateHz, 'pcm', 24), encoding: 'pcm24', bits: 24 }
  }
  return { clip: clipOf(kept, sampleRateHz, 'float', 32), encoding: 'float32', bits: 32 }
}

function clipOf(channels: readonly Float32Array[], sampleRateHz: number, kind: 'pcm' | 'float', bits: number): Clip {
  return { channels, sampleRateHz, encoding: { kind, bits }, problems: [] }
}

function areSame([first, ...others]: readonly Float32Array[]): boolean {
  return others.every((samples) => samples.every((sample, i) => sample === first![i]))
}

/** True when each sample is a whole number of steps. */
function liesOnGrid(samples: Float32Array, steps: number): boolean {
  const count = samples.length
  for (let i = 0; i < count; i++) {
    const step = samples[i]! * steps
    if (step !== Math.round(step) || step >= steps || step < -steps) return false
  }
  return true
}

/** Most that rounding to 32-bit floats, twice, can take a sample off its step: 2 · 2^-24 · 32 767 steps, and some room. */
const ROUNDING_STEPS = 0.005

/** Samples of 16 bits whose positive half was divided by 32 767, on the even grid again; `null` when they are others. */
function capturedSteps(samples: Float32Array): Float32Array | null {
  const even = new Float32Array(samples.length)
  const count = samples.length
  for (let i = 0; i < count; i++) {
    const sample = samples[i]!
    const scaled = sample * (sample > 0 ? 32_767 : 32_768)
    const step = Math.round(scaled)
    if (!(Math.abs(scaled - step) <= ROUNDING_STEPS) || Math.abs(step) > 32_768) return null
    even[i] = step / 32_768
  }
  return even
}
