import { butterworth, filterInPlace } from '../../../shared/audio/biquad'
import type { Clip } from '../../../shared/audio/clip'
import { Random } from '../../../shared/base/random'
import { filled } from '../../support/filled'

/** Sounds made here for the tests of clip quality: invented, seeded by name. */

export const RATE_HZ = 48_000

export function clipOf(samples: Float32Array, sampleRateHz = RATE_HZ, encoding: Clip['encoding'] = FLOAT): Clip {
  return { channels: [samples], sampleRateHz, encoding, problems: [] }
}
const FLOAT = { kind: 'float', bits: 32 } as const

/** White noise of this root mean square. */
export function noise(name: string, rms: number, durationS: number, rateHz = RATE_HZ): Float32Array {
  const random = new Random(name)
  return filled(Math.round(durationS * rateHz), () => random.normal(0, rms))
}

/** Noise that falls by 6 dB an octave above 20 Hz, of this root mean square. */
export function brownNoise(name: string, rms: number, durationS: number, rateHz = RATE_HZ): Float32Array {
  const samples = noise(name, 1, durationS, rateHz)
  const keep = Math.exp((-2 * Math.PI * 20) / rateHz)
  let last = 0
  for (let i = 0; i < samples.length; i++) {
    last = keep * last + samples[i]!
    samples[i] = last
  }
  return scaled(samples, rms / rmsOf(samples))
}

/** Bubbles: tones of 300 to 1500 Hz that die within some 20 ms, at random times, the loudest near 1; through soil. */
export function bubbling(name: string, perS: number, durationS: number, rateHz = RATE_HZ): Float32Array {
  const random = new Random(name)
  const samples = new Float32Array(Math.round(durationS * rateHz))
  for (let atS = random.exponential(perS); atS < durationS; atS += random.exponential(perS)) {
    const turn = (2 * Math.PI * random.logUniform(300, 1500)) / rateHz
    const decay = 1 / (rateHz * random.uniform(0.01, 0.04))
    const loudness = random.logUniform(0.1, 1)
    const start = Math.floor(atS * rateHz)
    const end = Math.min(samples.length, start + Math.ceil(8 / decay))
    for (let i = start; i < end; i++)
      samples[i]! += loudness * Math.exp(-decay * (i - start)) * Math.sin(turn * (i - start))
  }
  filterInPlace(samples, butterworth('lowpass', 800, rateHz))
  return samples
}

/** A dull thump with a click on it: what a foot or a finger does to a microphone. */
export function knock(rateHz = RATE_HZ): Float32Array {
  const random = new Random('knock')
  return Float32Array.from({ length: Math.round(0.06 * rateHz) }, (_, i) => {
    const t = i / rateHz
    return Math.exp(-t / 0.015) * (Math.sin(2 * Math.PI * 45 * t) + 0.3 * random.normal() * Math.exp(-t / 0.003))
  })
}

/** Vowels: pulses of a gliding pitch through two resonances, with pauses between the syllables. */
export function speech(durationS: number, rateHz = RATE_HZ): Float32Array {
  const random = new Random('speech')
  const samples = new Float32Array(Math.round(durationS * rateHz))
  let phase = 0
  for (let atS = 0.1; atS + 0.3 < durationS; atS += 0.45) {
    const fromHz = random.uniform(100, 180)
    const glide = random.uniform(0.8, 1.25)
    const frames = Math.round(0.28 * rateHz)
    for (let i = 0; i < frames; i++) {
      phase += (fromHz * glide ** (i / frames)) / rateHz
      if (phase < 1) continue
      phase -= 1
      samples[Math.floor(atS * rateHz) + i] = Math.sin((Math.PI * i) / frames)
    }
  }
  const [first, second] = [samples.slice(), samples]
  resonance(first, 600, 80, rateHz)
  resonance(second, 1100, 90, rateHz)
  return scaled(sum(first, second), 0.1 / rmsOf(first))
}

function resonance(samples: Float32Array, hz: number, widthHz: number, rateHz: number): void {
  const radius = Math.exp((-Math.PI * widthHz) / rateHz)
  const a = [-2 * radius * Math.cos((2 * Math.PI * hz) / rateHz), radius * radius] as const
  filterInPlace(samples, { b: [1, 0, 0], a })
}

export function sum(...parts: readonly Float32Array[]): Float32Array {
  return parts[0]!.map((_, i) => parts.reduce((total, part) => total + (part[i] ?? 0), 0))
}

export function scaled(samples: Float32Array, gain: number): Float32Array {
  return samples.map((x) => x * gain)
}

export function rmsOf(samples: Float32Array): number {
  return Math.sqrt(samples.reduce((total, x) => total + x * x, 0) / samples.length)
}

/** Lays a short sound over a longer one, at these times. */
export function laid(ground: Float32Array, sound: Float32Array, timesS: readonly number[], gain: number): Float32Array {
  const samples = ground.slice()
  for (const timeS of timesS) {
    const start = Math.round(timeS * RATE_HZ)
    for (let i = 0; i < sound.length && start + i < samples.length; i++) samples[start + i]! += gain * sound[i]!
  }
  return samples
}

/** To the grid of an integer format, clamped. */
export function quantised(samples: Float32Array, bits: number): Float32Array {
  const scale = 2 ** (bits - 1)
  return samples.map((x) => Math.max(-scale, Math.min(scale - 1, Math.round(x * scale))) / scale)
}
