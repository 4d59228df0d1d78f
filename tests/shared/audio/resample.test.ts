import { describe, expect, it } from 'vitest'
import { RESAMPLE_PASS_SHARE, resample } from '../../../shared/audio/resample'
import { InputError } from '../../../shared/base/errors'
import { Random } from '../../../shared/base/random'
import { powerToDb } from '../../../shared/base/units'
import { close } from '../../support/close'
import { filled } from '../../support/filled'

const tone = (rateHz: number, hz: number, durationS: number, phase = 0) =>
  filled(Math.round(rateHz * durationS), (i) => Math.sin((2 * Math.PI * hz * i) / rateHz + phase))
const middle = (samples: Float32Array) => {
  const part = samples.subarray(Math.floor(samples.length / 4), Math.floor((3 * samples.length) / 4))
  return Math.sqrt(part.reduce((sum, x) => sum + x * x, 0) / part.length)
}

const RATES: readonly (readonly [number, number])[] = [
  [44_100, 48_000],
  [48_000, 44_100],
  [48_000, 16_000],
  [8_000, 48_000],
  [48_000, 8_000],
  [192_000, 44_100],
  [44_100, 44_056], // more places between two samples than are worked out exactly
  [22_050, 8_000],
]

describe.each(RATES)('from %i to %i Hz', (fromHz, toHz) => {
  const nyquist = Math.min(fromHz, toHz) / 2

  it('a tone up to 0.9 of the lower Nyquist frequency stays what and where it was, within 0.01 dB', () => {
    for (const share of [0.01, 0.3, 0.7, RESAMPLE_PASS_SHARE]) {
      const out = resample(tone(fromHz, share * nyquist, 0.2), fromHz, toHz)
      const expected = tone(toHz, share * nyquist, 0.3)
      const off = middle(out.map((x, m) => x - expected[m]!)) / Math.SQRT1_2
      expect(off).toBeLessThan(10 ** (0.01 / 20) - 1)
    }
  })

  it('what lies beyond the lower Nyquist frequency is at least 80 dB down', () => {
    for (const share of [1.001, 1.01, 1.1, 1.5, 1.9]) {
      if (share * nyquist >= fromHz / 2) continue
      const out = resample(tone(fromHz, share * nyquist, 0.2, 1), fromHz, toHz)
      expect(powerToDb(middle(out) ** 2 / 0.5) ?? -999).toBeLessThan(-80)
    }
  })

  it('has its length to the sample', () => {
    for (const length of [1, 2, 1000, 1001]) {
      expect(resample(new Float32Array(length), fromHz, toHz).length).toBe(Math.ceil((length * toHz) / fromHz))
    }
  })
})

it('agrees with a plain sum of sincs, 2000 samples to each side', () => {
  const random = new Random('sinc')
  // Noise without its top fifth, which the two filters treat differently: a sum of tones below it.
  const tones = Array.from({ length: 30 }, () => ({
    hz: random.uniform(50, 0.8 * 22_050),
    phase: random.uniform(0, 6),
  }))
  const samples = Float32Array.from({ length: 6000 }, (_, i) =>
    tones.reduce((sum, { hz, phase }) => sum + Math.sin((2 * Math.PI * hz * i) / 44_100 + phase) / 30, 0),
  )
  const out = resample(samples, 44_100, 48_000)
  for (const m of [3000, 3001, 3100, 3333]) {
    const at = (m * 44_100) / 48_000
    let sum = 0
    for (let i = Math.ceil(at - 2000); i <= Math.floor(at + 2000); i++) {
      const x = i - at
      const hann = Math.cos((Math.PI * x) / 4000) ** 2
      sum += samples[i]! * hann * (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x))
    }
    close(out[m]!, sum, { abs: 2e-4, because: 'the filter is 82 dB good' })
  }
})

it('there and back again is the same up to 0.9 of the lower Nyquist frequency', () => {
  const samples = tone(48_000, 3_000, 0.2)
  const back = resample(resample(samples, 48_000, 16_000), 16_000, 48_000)
  expect(middle(back.map((x, i) => x - samples[i]!))).toBeLessThan(3e-4)
})

it('keeps a constant to its last digits, ends included', () => {
  for (const [fromHz, toHz] of RATES) {
    const out = resample(new Float32Array(100).fill(-0.5), fromHz, toHz)
    expect(out.every((x) => Math.abs(x + 0.5) < 1e-6)).toBe(true)
  }
})

it('to the same rate is a copy', () => {
  const samples = Float32Array.of(1, 2, 3)
  expect(resample(samples, 48_000, 48_000)).toEqual(samples)
  expect(resample(samples, 48_000, 48_000)).not.toBe(samples)
})

it.each([
  [0, 48_000],
  [48_000, -1],
  [44_100.5, 48_000],
  [48_000, Number.NaN],
  [192_000, 700],
])('refuses to go from %d to %d Hz', (fromHz, toHz) => {
  expect(() => resample(new Float32Array(10), fromHz, toHz)).toThrow(InputError)
})
