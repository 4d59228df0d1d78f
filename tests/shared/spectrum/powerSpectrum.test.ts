import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { powerSpectrum, transformOfSize, transformSizeFor } from '../../../shared/spectrum/powerSpectrum'
import { type WindowName, windowSamples } from '../../../shared/spectrum/windows'
import { close } from '../../support/close'
import { sine } from './signals'

const NAMES: WindowName[] = ['rectangular', 'hann', 'hamming', 'blackman', 'blackman-harris']
const sum = (values: ArrayLike<number>) => Array.from(values).reduce((total, v) => total + v, 0)

/** The discrete Fourier transform by its definition. */
function slowPower(x: ArrayLike<number>, k: number): number {
  let re = 0
  let im = 0
  for (let n = 0; n < x.length; n++) {
    re += x[n]! * Math.cos((2 * Math.PI * k * n) / x.length)
    im -= x[n]! * Math.sin((2 * Math.PI * k * n) / x.length)
  }
  return re * re + im * im
}

describe('powerSpectrum', () => {
  it.each([2, 4, 8, 64, 128])('agrees with a transform by definition at %i samples', (size) => {
    const random = new Random(size)
    const x = Float64Array.from({ length: size }, () => random.normal())
    const power = powerSpectrum(x, 'rectangular')
    expect(power.length).toBe(size / 2 + 1)
    power.forEach((p, k) => {
      const sides = k === 0 || k === size / 2 ? 1 : 2
      close(p, (sides * slowPower(x, k)) / size ** 2, { abs: 1e-13, because: 'the same sum in another order' })
    })
  })

  it('keeps the mean square through the rectangular window (Parseval), seed 1', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 2, maxLength: 700 }), (list) => {
        const x = Float64Array.from(list)
        close(sum(powerSpectrum(x, 'rectangular')), sum(x.map((v) => v * v)) / x.length, {
          abs: 1e-12,
          because: 'Parseval, padded or not; rounding only',
        })
      }),
      { seed: 1, numRuns: 60 },
    )
  })

  it.each(NAMES)('sums to the windowed mean square over the window power through %s', (name) => {
    const random = new Random(7)
    const x = Float64Array.from({ length: 1000 }, () => random.normal())
    const window = windowSamples(name, 1000)
    const expected = sum(x.map((v, n) => (v * window[n]!) ** 2)) / sum(window.map((w) => w * w))
    close(sum(powerSpectrum(x, name)), expected, { rel: 1e-10, because: 'Parseval' })
  })

  it.each(NAMES)('a full-scale sine reads -3.01 dBFS through %s', (name) => {
    const power = powerSpectrum(sine(1000, 8000, 4096), name)
    close(10 * Math.log10(sum(power)), -3.0103, { abs: 1e-4, because: 'mean square ½; a whole number of periods' })
  })

  it('a full-scale 16-bit sine stands 98.09 dB over its rounding noise (6.02 dB a bit and 1.76 dB)', () => {
    const size = 65536
    const bin = 4093 // a prime, so that every period is rounded differently
    const x = Float64Array.from({ length: size }, (_, n) => {
      return Math.round(32767.5 * Math.sin((2 * Math.PI * bin * n) / size)) / 32767.5
    })
    const power = powerSpectrum(x, 'rectangular')
    const ratioDb = 10 * Math.log10(power[bin]! / (sum(power) - power[bin]!))
    close(ratioDb, 98.09, { abs: 0.3, because: 'the noise of an undithered rounding is white only on average' })
  })

  it('refuses a frame of fewer than 2 samples', () => {
    expect(() => powerSpectrum(new Float64Array(1))).toThrow('frame has 1 samples')
  })

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('refuses a sample of %s', (bad) => {
    for (const at of [0, 5, 15]) {
      const x = new Float64Array(16).fill(0.1)
      x[at] = bad
      expect(() => powerSpectrum(x)).toThrow('not finite')
    }
  })
})

describe('transformOfSize', () => {
  it('inverts what it transformed', () => {
    const random = new Random(3)
    const input = Float64Array.from({ length: 64 }, () => random.normal())
    const spectrum = new Float64Array(64)
    const back = new Float64Array(64)
    transformOfSize(32).complex(spectrum, input)
    transformOfSize(32).inverse(back, spectrum)
    back.forEach((v, n) => {
      close(v, input[n]!, { abs: 1e-13, because: 'there and back' })
    })
  })

  it.each([0, 1, 3, 96, 2 ** 23, Number.NaN])('refuses a size of %s', (size) => {
    expect(() => transformOfSize(size)).toThrow(`transform size is ${size}`)
  })

  it('refuses arrays of a wrong length, which the engine would answer with NaN', () => {
    const transform = transformOfSize(16)
    expect(() => transform.real(new Float64Array(32), new Float64Array(15))).toThrow('has 15 numbers; must have 16')
    expect(() => transform.real(new Float64Array(18), new Float64Array(16))).toThrow('has 18 numbers; must have 32')
    expect(() => transform.complex(new Float64Array(32), new Float64Array(16))).toThrow('must have 32')
  })

  it('finds the smallest size that holds a frame', () => {
    expect([1, 2, 3, 1024, 1025].map(transformSizeFor)).toEqual([2, 2, 4, 1024, 2048])
  })
})
