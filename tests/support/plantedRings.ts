import type { Random } from '../../shared/base/random'
import { bubbleDecayPerS } from '../../shared/bubbles/bubbleDecay'
import { minnaertRadiusM } from '../../shared/bubbles/minnaert'
import { filled } from './filled'

export interface PlantedRing {
  readonly timeS: number
  readonly pitchHz: number
  /** Amplitude falls as exp(−decayPerS·t). */
  readonly decayPerS: number
  /** Sum of squared samples times the sample time: amplitude²/(4·decay). */
  readonly energy: number
}

/** Adds A·sin(2πft)·exp(−dt) from its onset on, the plain form of van den Doel's bubble. [vandenDoel2005] */
export function addRing(samples: Float32Array, sampleRateHz: number, ring: PlantedRing): void {
  const { timeS, pitchHz, decayPerS, energy } = ring
  const amplitude = Math.sqrt(4 * energy * decayPerS)
  const first = Math.ceil(timeS * sampleRateHz)
  const last = Math.min(samples.length, Math.ceil((timeS + 9 / decayPerS) * sampleRateHz))
  for (let i = first; i < last; i++) {
    const t = i / sampleRateHz - timeS
    samples[i]! += amplitude * Math.exp(-decayPerS * t) * Math.sin(2 * Math.PI * pitchHz * t)
  }
}

/** A free bubble's ring of this pitch, its energy so many dB over a noise's one-sided power density. */
export function freeRing(timeS: number, pitchHz: number, overNoiseDb: number, noiseDensity: number): PlantedRing {
  const decayPerS = bubbleDecayPerS(minnaertRadiusM(pitchHz))
  return { timeS, pitchHz, decayPerS, energy: noiseDensity * 10 ** (overNoiseDb / 10) }
}

/** White noise of unit variance. Its one-sided density is 2/sampleRateHz. */
export function whiteNoise(count: number, random: Random): Float32Array {
  return filled(count, () => random.normal())
}

/** Random arrivals at a rate, leaving a quarter of a second free at both ends. */
export function poissonTimes(ratePerS: number, durationS: number, random: Random): number[] {
  const times: number[] = []
  for (let t = 0.25 + random.exponential(ratePerS); t < durationS - 0.25; t += random.exponential(ratePerS))
    times.push(t)
  return times
}
