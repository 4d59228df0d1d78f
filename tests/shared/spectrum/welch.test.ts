import { describe, expect, it } from 'vitest'
import { welch } from '../../../shared/spectrum/welch'
import { close } from '../../support/close'
import { readSpectrumReference, referenceSignal, sameDensity, sine, whiteNoise } from './signals'

const sum = (values: ArrayLike<number>) => Array.from(values).reduce((total, v) => total + v, 0)

describe('welch against SciPy', () => {
  const reference = readSpectrumReference()
  const signal = referenceSignal(reference)
  const rateHz = reference.signal.sample_rate_hz

  it('starts from the same signal', () => {
    reference.signal.first_samples.forEach((expected, n) => {
      close(signal[n], expected, { abs: 1e-15, because: 'the same integers' })
    })
    close(sum(signal.map((v) => v * v)) / signal.length, reference.signal.mean_square, {
      rel: 1e-12,
      because: 'sines of two libraries, summed in another order',
    })
  })

  it.each([
    { number: 0, options: { window: 'hann', segmentLength: 1024 } as const },
    { number: 1, options: { window: 'blackman', segmentLength: 900, overlap: 0.75, detrend: 'none' } as const },
  ])('gives the same density, case $number', ({ number, options }) => {
    sameDensity(welch(signal, rateHz, options)!, reference.welch[number]!)
  })
})

describe('welch', () => {
  it('sums times the bin width to the mean square of a single rectangular segment (Parseval)', () => {
    const x = whiteNoise(5, 2048)
    const { density, binWidthHz } = welch(x, 8000, { segmentLength: 2048, window: 'rectangular', detrend: 'none' })!
    const meanSquare = sum(Float64Array.from(x, (v) => v * v)) / x.length
    close(sum(density) * binWidthHz, meanSquare, { rel: 1e-10, because: 'Parseval' })
  })

  it('reads white noise of mean square 1 as 2/fs per hertz', () => {
    const { density } = welch(whiteNoise(6, 400_000), 8000, { segmentLength: 256 })!
    const inner = density.subarray(2, 127)
    close(sum(inner) / inner.length, 2 / 8000, { rel: 0.01, because: '3000 segments of 125 bins; 5 sigma is 1 %' })
  })

  it('takes a constant away unless told not to', () => {
    const x = new Float64Array(1024).fill(0.5)
    expect(sum(welch(x, 8000, { segmentLength: 256 })!.density)).toBe(0)
    const { density, binWidthHz } = welch(x, 8000, { segmentLength: 256, detrend: 'none' })!
    close(density[0]! * binWidthHz * 1.5, 0.25, { rel: 1e-12, because: 'a Hann constant: 2/3 in bin 0, 1/3 in bin 1' })
  })

  it.each([
    { segments: 8, expected: 0.13108 },
    { segments: 16, expected: 0.06576 },
    { segments: 64, expected: 0.01648 },
  ])(
    // The formula is Welch's, c the correlation of Hann windows that overlap by half. [Welch1967] [Harris1978]
    'varies as Welch 1967 says for $segments half-overlapped Hann segments: (1/K)(1 + 2c²) − 2c²/K², c = 1/6',
    ({ segments, expected }) => {
      const runs = 400
      const binFrom = 4
      const binTo = 60
      const estimates: number[] = []
      for (let run = 0; run < runs; run++) {
        const x = whiteNoise(`welch ${segments} ${run}`, 64 * (segments + 1))
        const { density, segmentCount } = welch(x, 2, { segmentLength: 128, detrend: 'none' })!
        expect(segmentCount).toBe(segments)
        estimates.push(...density.subarray(binFrom, binTo))
      }
      const mean = sum(estimates) / estimates.length
      const variance = sum(estimates.map((e) => (e - mean) ** 2)) / estimates.length
      close(variance / mean ** 2, expected, { rel: 0.1, because: '400 runs of 57 bins: 10 % is over 5 sigma' })
    },
  )

  it('has nothing to say of a clip shorter than a segment', () => {
    expect(welch(sine(100, 8000, 255), 8000, { segmentLength: 256 })).toBeNull()
  })

  it('names the segment that holds a number that is not finite', () => {
    const x = new Float64Array(1000)
    x[700] = Number.NaN
    expect(() => welch(x, 8000, { segmentLength: 256 })).toThrow('the frame from sample 512 on')
  })

  it.each([
    { options: { segmentLength: 1 }, rate: 8000, message: 'segmentLength is 1' },
    { options: { segmentLength: 256, overlap: 1 }, rate: 8000, message: 'overlap is 1' },
    { options: { segmentLength: 256 }, rate: 0, message: 'sampleRateHz is 0' },
  ])('refuses: $message', ({ options, rate, message }) => {
    expect(() => welch(new Float64Array(1000), rate, options)).toThrow(message)
  })
})
