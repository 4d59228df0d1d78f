import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { Random } from '../../../shared/base/random'

/** Seeded white Gaussian noise. */
export function whiteNoise(seed: number | string, sampleCount: number, rms = 1): Float32Array {
  const random = new Random(seed)
  return Float32Array.from({ length: sampleCount }, () => random.normal(0, rms))
}

export function sine(frequencyHz: number, sampleRateHz: number, sampleCount: number, amplitude = 1): Float32Array {
  return Float32Array.from(
    { length: sampleCount },
    (_, n) => amplitude * Math.sin((2 * Math.PI * frequencyHz * n) / sampleRateHz + 0.3),
  )
}

/** What makeSpectrumReference.py wrote. */
export interface SpectrumReference {
  readonly versions: { readonly scipy: string }
  readonly command: string
  readonly date: string
  readonly signal: {
    readonly sample_rate_hz: number
    readonly sample_count: number
    readonly constant: number
    readonly rings: readonly (readonly [number, number, number, number])[]
    readonly first_samples: readonly number[]
    readonly mean_square: number
  }
  readonly welch: readonly {
    readonly settings: { readonly nperseg: number; readonly noverlap: number }
    readonly bin_width_hz: number
    readonly density: readonly number[]
  }[]
  readonly spectrogram: {
    readonly bin_width_hz: number
    readonly times_s: readonly number[]
    readonly columns: readonly { readonly column: number; readonly level_db_per_hz: readonly number[] }[]
  }
  readonly third_octaves: readonly { readonly mid_hz: number; readonly level_dbfs: number }[]
  readonly windows_of_16: Readonly<Record<string, readonly number[]>>
}

export function readSpectrumReference(): SpectrumReference {
  return JSON.parse(readFileSync(resolve(import.meta.dirname, '../../reference/spectrumReference.json'), 'utf8'))
}

/** The signal of makeSpectrumReference.py: a linear congruential generator's noise, a constant and decaying tones. */
export function referenceSignal({ signal }: SpectrumReference): Float64Array {
  let state = 12345
  const samples = Float64Array.from({ length: signal.sample_count }, () => {
    state = (Math.imul(1664525, state) + 1013904223) >>> 0
    return signal.constant + 0.1 * (state / 4294967296 - 0.5)
  })
  for (const [startS, pitchHz, decayPerS, amplitude] of signal.rings) {
    const first = Math.round(startS * signal.sample_rate_hz)
    for (let n = first; n < samples.length; n++) {
      const t = (n - first) / signal.sample_rate_hz
      samples[n]! += amplitude * Math.exp(-decayPerS * t) * Math.sin(2 * Math.PI * pitchHz * t)
    }
  }
  return samples
}
