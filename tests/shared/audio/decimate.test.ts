import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DECIMATE_PASS_SHARE, decimate } from '../../../shared/audio/decimate'
import { InputError } from '../../../shared/base/errors'
import { Random } from '../../../shared/base/random'
import { powerToDb } from '../../../shared/base/units'
import { close } from '../../support/close'
import { filled } from '../../support/filled'

const FACTORS = [2, 3, 4, 5, 6, 8, 12, 16, 35, 48]
const tone = (length: number, cyclesPerSample: number, phase = 0) =>
  filled(length, (i) => Math.sin(2 * Math.PI * cyclesPerSample * i + phase))
/** Root of the mean square of the middle half. */
const middle = (samples: ArrayLike<number>) => {
  const part = Array.from(samples).slice(Math.floor(samples.length / 4), Math.floor((3 * samples.length) / 4))
  return Math.sqrt(part.reduce((sum, x) => sum + x * x, 0) / part.length)
}

describe.each(FACTORS)('by %i', (factor) => {
  const length = factor * 800
  const newNyquist = 0.5 / factor

  it('a tone up to 0.8 of the new Nyquist frequency stays what and where it was, within 0.01 dB', () => {
    for (const share of [0.003, 0.1, 0.4, 0.6, DECIMATE_PASS_SHARE]) {
      const out = decimate(tone(length, share * newNyquist), factor)
      const expected = tone(out.length, share * newNyquist * factor)
      const off = middle(out.map((x, m) => x - expected[m]!)) / Math.SQRT1_2
      expect(off).toBeLessThan(10 ** (0.01 / 20) - 1)
    }
  })

  it('what would alias there is at least 80 dB down', () => {
    const places = [-0.8, -0.5, -0.1, 0.1, 0.5, 0.8]
    for (let multiple = 1; multiple <= Math.min(factor - 1, 12); multiple++) {
      for (const place of places) {
        const frequency = (2 * multiple + place) * newNyquist
        if (frequency > 0.5) continue
        const out = decimate(tone(length, frequency, 1), factor)
        expect(powerToDb(middle(out) ** 2 / 0.5) ?? -999).toBeLessThan(-80)
      }
    }
  })
})

it('equals the sum that defines it, tap by tap', () => {
  const random = new Random('naive')
  const samples = Float32Array.from({ length: 4001 }, () => random.uniform(-1, 1))
  for (const factor of [2, 3, 4, 7]) {
    // The filter is seen by sending single samples through; then every output is worked out the slow way.
    const reach = 40 * factor
    const response = new Map<number, number>()
    for (let offset = -reach; offset <= reach; offset++) {
      const one = new Float32Array(4 * reach + 1)
      const at = Math.round((2 * reach) / factor) * factor
      one[at + offset] = 1
      response.set(offset, decimate(one, factor)[at / factor]!)
    }
    const out = decimate(samples, factor)
    expect(out.length).toBe(Math.ceil(samples.length / factor))
    for (const m of [0, 1, 5, 100, out.length - 2, out.length - 1]) {
      let sum = 0
      for (const [offset, tap] of response) {
        sum += tap * samples[Math.min(samples.length - 1, Math.max(0, m * factor + offset))]!
      }
      close(out[m]!, sum, { abs: 1e-6, because: 'both are sums of Float32' })
    }
  }
})

it('keeps a constant to its last digits, ends included, at any length', () => {
  for (const length of [1, 2, 3, 50, 5000]) {
    const out = decimate(new Float32Array(length).fill(0.25), 12)
    expect(out.length).toBe(Math.ceil(length / 12))
    expect(out.every((x) => Math.abs(x - 0.25) < 1e-6)).toBe(true)
  }
})

it('by 1 is a copy, and of nothing is nothing', () => {
  const samples = Float32Array.of(1, 2, 3)
  const copy = decimate(samples, 1)
  expect(copy).toEqual(samples)
  expect(copy).not.toBe(samples)
  expect(decimate(new Float32Array(0), 4).length).toBe(0)
})

it('is linear, turns round with time, and does not depend on gain (seed 21)', () => {
  fc.assert(
    fc.property(
      fc.integer(),
      fc.constantFrom(2, 3, 4, 6),
      fc.integer({ min: -60, max: 20 }),
      (seed, factor, gainDb) => {
        const random = new Random(seed)
        const samples = filled(factor * 60 + 1, () => random.normal())
        const out = decimate(samples, factor)
        const gain = 10 ** (gainDb / 20)
        const louder = decimate(
          samples.map((x) => x * gain),
          factor,
        )
        const backward = decimate(samples.slice().reverse(), factor)
        for (let m = 0; m < out.length; m++) {
          close(louder[m]! / gain, out[m]!, { abs: 1e-5, because: 'Float32' })
          close(backward[out.length - 1 - m]!, out[m]!, { abs: 1e-5, because: 'Float32' })
        }
      },
    ),
    { seed: 21, numRuns: 40 },
  )
})

it.each([0, -2, 1.5, Number.NaN, 4097])('refuses a factor of %d', (factor) => {
  expect(() => decimate(new Float32Array(10), factor)).toThrow(InputError)
})
