import { describe, expect, it } from 'vitest'
import { spectralKurtosis } from '../../../shared/spectrum/spectralKurtosis'
import { close } from '../../support/close'
import { sine, whiteNoise } from './signals'

const options = { segmentLength: 64, detrend: 'none' } as const
const told = (values: readonly (number | null)[]) => values.filter((v): v is number => v !== null)
const mean = (values: readonly number[]) => values.reduce((total, v) => total + v, 0) / values.length

// The estimator without bias, and its standard deviation for Gaussian noise, are Antoni's. [Antoni2006]
describe('spectralKurtosis', () => {
  it('is 0 with a standard deviation of about 2/√K for steady Gaussian noise (Antoni 2006)', () => {
    const { values, segmentCount } = spectralKurtosis(whiteNoise(11, 64 * 4096), 8000, options)!
    expect(segmentCount).toBe(4096)
    const bins = told(values)
    expect(bins.length).toBe(31)
    close(mean(bins), 0, { abs: 0.035, because: '5 sigma of the mean of 31 bins, neighbours alike through Hann' })
    const deviation = Math.sqrt(mean(bins.map((v) => v * v)))
    close(deviation, 2 / Math.sqrt(4096), { rel: 0.5, because: '31 bins, some 20 of them independent' })
  })

  it('has no bias even with few segments (a common formula without the correction reads 2/(K − 1) too high)', () => {
    const all: number[] = []
    for (let run = 0; run < 2000; run++) {
      all.push(...told(spectralKurtosis(whiteNoise(`few ${run}`, 64 * 8), 8000, options)!.values))
    }
    close(mean(all), 0, {
      abs: 0.02,
      because: '62 000 bins of standard deviation 0.6; the wrong formula is off by 0.29',
    })
  })

  it('is exactly −1 for a constant tone on a bin', () => {
    const tone = Float64Array.from({ length: 64 * 50 }, (_, n) => Math.sin((2 * Math.PI * 8 * n) / 64))
    close(spectralKurtosis(tone, 8000, options)!.values[8], -1, { abs: 1e-9, because: 'every segment is the same' })
  })

  it.each([
    { duty: 0.5, expected: 2, within: 0.15 },
    { duty: 0.1, expected: 18, within: 1.5 },
  ])('is 2/q − 2 for noise that is on for q = $duty of the time', ({ duty, expected, within }) => {
    const x = whiteNoise(`gated ${duty}`, 64 * 20_000)
    x.forEach((_, n) => {
      if (Math.floor(n / 64) % 10 >= duty * 10) x[n] = 0
    })
    close(mean(told(spectralKurtosis(x, 8000, options)!.values)), expected, {
      abs: within,
      because: 'mean of 31 bins over 20 000 segments, 5 sigma',
    })
  })

  it('has no value for silence, at DC and at Nyquist', () => {
    expect(told(spectralKurtosis(new Float32Array(6400), 8000, options)!.values)).toEqual([])
    const { values } = spectralKurtosis(whiteNoise(1, 6400), 8000, options)!
    expect([values[0], values.at(-1)]).toEqual([null, null])
  })

  it('needs two segments', () => {
    expect(spectralKurtosis(sine(100, 8000, 127), 8000, options)).toBeNull()
    expect(() => spectralKurtosis(sine(100, 8000, 127), 8000, { segmentLength: 2 })).toThrow('segmentLength is 2')
  })
})
