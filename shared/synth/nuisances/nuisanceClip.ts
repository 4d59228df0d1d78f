import type { Random } from '../../base/random'
import type { Rings } from '../bubbleTrain'
import { ENVELOPE_STEP_S } from '../clipSounds'
import { CELL_WIDTH_HZ, onGrid } from '../grid'

/** What a nuisance needs to know of the clip it spoils. */
export interface NuisanceClip {
  readonly durationS: number
  /** Power of the yard's ambient floor, all bands: nuisances are loud or faint against it. */
  readonly ambientPower: number
  /** Power gain to the file of what comes through the ground. */
  readonly ground: Float64Array
  /** Power gain to the file of what comes through the air. */
  readonly air: Float64Array
  readonly random: Random
}

/** A spectrum scaled to a total power. */
export function withPower(shape: (frequencyHz: number) => number, power: number): Float64Array {
  const psd = onGrid(shape)
  let sum = 0
  for (let g = 0; g < psd.length; g++) sum += psd[g]! * CELL_WIDTH_HZ[g]!
  return psd.map((p) => (p * power) / sum)
}

/** Spectrum times gain. */
export function through(psd: Float64Array, gain: Float64Array): Float64Array {
  return psd.map((p, g) => p * gain[g]!)
}

/** A bump between two frequencies with slopes of 12 dB an octave. */
export function bump(lowHz: number, highHz: number): (frequencyHz: number) => number {
  return (f) => 1 / ((1 + (lowHz / f) ** 4) * (1 + (f / highHz) ** 4))
}

export function blankEnvelope(durationS: number): Float32Array {
  return new Float32Array(Math.ceil(durationS / ENVELOPE_STEP_S) + 1)
}

/** Adds a burst that rises at once and dies as e^(−t/τ) to an envelope. */
export function addBurst(envelope: Float32Array, atS: number, tauS: number, height: number): void {
  const first = Math.max(0, Math.ceil(atS / ENVELOPE_STEP_S))
  for (let i = first; i < envelope.length; i++) {
    const value = height * Math.exp(-(i * ENVELOPE_STEP_S - atS) / tauS)
    if (value < height * 1e-3) return
    if (value > envelope[i]!) envelope[i] = value
  }
}

export interface OneRing {
  readonly timeS: number
  readonly pitchHz: number
  readonly amplitude: number
  readonly decayPerS: number
}

export function toRings(list: readonly OneRing[]): Rings {
  const sorted = [...list].sort((a, b) => a.timeS - b.timeS)
  return {
    timeS: Float64Array.from(sorted, (r) => r.timeS),
    pitchHz: Float64Array.from(sorted, (r) => r.pitchHz),
    amplitude: Float64Array.from(sorted, (r) => r.amplitude),
    decayPerS: Float64Array.from(sorted, (r) => r.decayPerS),
    risePerS: new Float64Array(sorted.length),
  }
}
