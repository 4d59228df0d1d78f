import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect } from 'vitest'
import { Random } from '../../../shared/base/random'
import type { Spectrogram } from '../../../shared/spectrum/spectrogram'
import type { PowerDensity } from '../../../shared/spectrum/welch'
import { close } from '../../support/close'
import { filled } from '../../support/filled'

/** Seeded white Gaussian noise. */
export function whiteNoise(seed: number | string, sampleCount: number, rms = 1): Float32Array {
  const random = new Random(seed)
  return filled(sampleCount, () => random.normal(0, rms))
}

export function sine(frequencyHz: number, sampleRateHz: number, sampleCount: number, amplitude = 1): Float32Array {
  return filled(sampleCount, (n) => amplitude * Math.sin((2 * Math.PI * frequencyHz * n) / sampleRateHz + 0.3))
}

/** A Welch density as SciPy gave it. */
export interface WelchReference {
  readonly bin_width_hz: number
  readonly density: readonly number[]
}

/** A spectrogram as SciPy gave it: all times, some columns. */
export interface SpectrogramReference {
  readonly bin_width_hz: number
  readonly times_s: readonly number[]
  readonly columns: readonly { readonly column: number; readonly level_db_per_hz: readonly number[] }[]
}

/** What makeSpectrumReference.py wrote of a signal made by formula. */
export interface SpectrumReference {
  readonly signal: {
    readonly sample_rate_hz: number
    readonly sample_count: number
    readonly constant: number
    readonly rings: readonly (readonly [number, number, number, number])[]
    readonly first_samples: readonly number[]
    readonly mean_square: number
  }
  readonly welch: readonly WelchReference[]
  readonly spectrogram: SpectrogramReference
  readonly third_octaves: readonly { readonly mid_hz: number; readonly level_dbfs: number }[]
  readonly windows_of_16: Readonly<Record<string, readonly number[]>>
}

/** What makeSpectrumReference.py wrote of a clip of demo-audio. */
export interface DemoSpectrumReference {
  readonly command: string
  readonly clip: {
    readonly file: string
    readonly sha256: string
    readonly sample_rate_hz: number
    readonly sample_count: number
    readonly mean_square: number
  }
  readonly welch: readonly WelchReference[]
  readonly spectrogram: SpectrogramReference
}

const readReference = (name: string) =>
  JSON.parse(readFileSync(resolve(import.meta.dirname, '../../reference', name), 'utf8'))

export function readSpectrumReference(): SpectrumReference {
  return readReference('spectrumReference.json')
}

export function readDemoSpectrumReference(): DemoSpectrumReference {
  return readReference('demoSpectrumReference.json')
}

/** Asserts that two densities are the same numbers. */
export function sameDensity(actual: PowerDensity, expected: WelchReference): void {
  expect(actual.binWidthHz).toBe(expected.bin_width_hz)
  expect(actual.density.length).toBe(expected.density.length)
  actual.density.forEach((d, k) => {
    close(d, expected.density[k]!, { rel: 1e-8, because: 'the same arithmetic; the weakest bins lose digits' })
  })
}

/** Asserts that two spectrograms have the same axes and levels. */
export function sameSpectrogram(actual: Spectrogram, expected: SpectrogramReference): void {
  expect(actual.binWidthHz).toBe(expected.bin_width_hz)
  expect(actual.timesS.length).toBe(expected.times_s.length)
  actual.timesS.forEach((timeS, column) => {
    close(timeS, expected.times_s[column]!, { abs: 1e-12, because: 'multiples of the hop' })
  })
  expect(expected.columns.length).toBeGreaterThan(5)
  for (const { column, level_db_per_hz } of expected.columns) {
    expect(actual.binCount).toBe(level_db_per_hz.length)
    level_db_per_hz.forEach((level, bin) => {
      const ours = actual.levelsDbPerHz[column * actual.binCount + bin]
      close(ours, level, { abs: 2e-5, because: 'levels are kept in single precision' })
    })
  }
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
