import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../../shared/base/errors'
import { EAR_CEILING, makeLimiter } from '../../../shared/listen/limiter'
import { close } from '../../support/close'

/** Gives the samples to a fresh limiter in blocks and returns what comes out, its tail included. */
function limited(samples: ArrayLike<number>, blockLength = 128, sampleRateHz = 8000): Float32Array {
  const limiter = makeLimiter({ sampleRateHz })
  const from = Float32Array.from([...Array.from(samples), ...new Array<number>(limiter.delaySamples).fill(0)])
  const to = new Float32Array(from.length)
  for (let n = 0; n < from.length; n += blockLength) {
    limiter.process(from.subarray(n, n + blockLength), to.subarray(n, n + blockLength))
  }
  return to
}

const peak = (samples: Float32Array) => samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0)

const anySample = fc.oneof(
  fc.float({ min: -1, max: 1, noNaN: true }),
  fc.float({ noNaN: false }),
  fc.constantFrom(0, 1, -1, 1e30, -3.4e38, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NaN),
)

describe('the limiter before the ears', () => {
  it('has its ceiling at -12 dBFS', () => {
    close(20 * Math.log10(EAR_CEILING), -12, { abs: 1e-12, because: 'the definition of a level' })
  })

  it('lets no sample above the ceiling out, whatever comes in (seed 12)', () => {
    fc.assert(
      fc.property(fc.array(anySample, { maxLength: 400 }), fc.integer({ min: 1, max: 130 }), (samples, block) => {
        const out = limited(samples, block)
        expect(out.every((x) => Math.abs(x) <= EAR_CEILING)).toBe(true) // false for NaN too
      }),
      { seed: 12, numRuns: 300 },
    )
  })

  it('needs its last clamp only for rounding: the gain alone holds the ceiling (seed 13)', () => {
    const finite = fc.double({ min: -1e4, max: 1e4, noNaN: true })
    fc.assert(
      fc.property(fc.array(finite, { minLength: 1, maxLength: 300 }), (samples) => {
        const out = limited(samples)
        const length = makeLimiter({ sampleRateHz: 8000 }).delaySamples
        const gains = samples.map((x, n) => out[n + length]! / Math.fround(x))
        // A clamped sample would show as a jump of the gain that the average of 40 samples cannot make.
        const steps = gains.slice(1).map((gain, n) => Math.abs(gain - gains[n]!))
        const told = steps.filter((_, n) => Math.abs(samples[n]!) > 1e-6 && Math.abs(samples[n + 1]!) > 1e-6)
        expect(told.every((step) => step <= 1 / (length + 1) + 1e-3)).toBe(true)
      }),
      { seed: 13, numRuns: 200 },
    )
  })

  it('passes what is below the ceiling unchanged, only late', () => {
    const quiet = Float32Array.from({ length: 500 }, (_, n) => 0.2 * Math.sin(n * n))
    const { delaySamples } = makeLimiter({ sampleRateHz: 8000 })
    const out = limited(quiet)
    for (let n = 0; n < quiet.length; n++) {
      close(out[n + delaySamples], quiet[n]!, { abs: 1e-7, because: 'a gain of 1 in doubles, stored in singles' })
    }
  })

  it('brings a steady loud tone down to the ceiling, not far below it', () => {
    const tone = Float32Array.from({ length: 8000 }, (_, n) => 4 * Math.sin((2 * Math.PI * 500 * n) / 8000))
    const settled = limited(tone).subarray(2000, 8000)
    expect(peak(settled)).toBeGreaterThan(0.85 * EAR_CEILING)
  })

  it('comes back to full gain after a bang', () => {
    const samples = new Float32Array(8000).fill(0.1)
    samples[100] = 30
    const out = limited(samples)
    close(out[7900], 0.1, { rel: 1e-3, because: 'twelve release times have passed' })
    expect(out[200]!).toBeLessThan(0.05)
  })

  it('says the same whatever the block length', () => {
    const samples = Float32Array.from({ length: 700 }, (_, n) => 3 * Math.sin(n ** 1.5))
    expect(limited(samples, 7)).toEqual(limited(samples, 700))
  })

  it('goes on after samples that are no numbers', () => {
    const samples = new Float32Array(600).fill(0.1)
    samples.fill(Number.NaN, 50, 60)
    close(limited(samples)[500], 0.1, { abs: 1e-6, because: 'nothing of them is kept' })
  })

  it('refuses a rate or a time that is not above 0', () => {
    expect(() => makeLimiter({ sampleRateHz: 0 })).toThrow(InputError)
    expect(() => makeLimiter({ sampleRateHz: 8000, lookAheadS: -1 })).toThrow(/lookAheadS is -1/)
  })
})
