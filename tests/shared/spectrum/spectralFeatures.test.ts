import fc from 'fast-check'
import Meyda from 'meyda'
import { describe, expect, it } from 'vitest'
import { powerSpectrum } from '../../../shared/spectrum/powerSpectrum'
import { spectralFeatures } from '../../../shared/spectrum/spectralFeatures'
import { welch } from '../../../shared/spectrum/welch'
import { windowSamples } from '../../../shared/spectrum/windows'
import { close } from '../../support/close'
import { sine, whiteNoise } from './signals'

describe('spectralFeatures of ideal spectra', () => {
  it('one bin: centroid and roll-off there, no spread, no moments, flatness 0', () => {
    const power = new Float64Array(129)
    power[40] = 3
    const features = spectralFeatures(power, 10)!
    expect(features).toMatchObject({ centroidHz: 400, spreadHz: 0, rolloffHz: 400, skewness: null, kurtosis: null })
    expect(features.flatness).toBe(0)
    close(features.crestDb, 10 * Math.log10(128), { abs: 1e-9, because: 'one of 128 bins (DC does not count)' })
  })

  it('two equal bins: the middle between them, half their distance', () => {
    const power = new Float64Array(129)
    power[30] = power[50] = 2
    const features = spectralFeatures(power, 10)!
    close(features.centroidHz, 400, { rel: 1e-12, because: 'closed form' })
    close(features.spreadHz, 100, { rel: 1e-12, because: 'closed form' })
    close(features.skewness, 0, { abs: 1e-12, because: 'symmetric' })
    close(features.kurtosis, 1, { rel: 1e-12, because: 'closed form for two points' })
  })

  it('flat: centroid in the middle, flatness 1, crest 0 dB, roll-off at its share', () => {
    const features = spectralFeatures(new Float64Array(1001).fill(0.2), 1)!
    close(features.centroidHz, 500.5, { rel: 1e-12, because: 'mean of 1 … 1000' })
    close(features.spreadHz, Math.sqrt((1000 ** 2 - 1) / 12), { rel: 1e-12, because: 'uniform over 1000 bins' })
    close(features.kurtosis, 1.8, { abs: 1e-5, because: 'uniform' })
    close(features.flatness, 1, { rel: 1e-12, because: 'all bins alike' })
    close(features.crestDb, 0, { abs: 1e-12, because: 'all bins alike' })
    close(features.rolloffHz, 850, { abs: 1, because: '85 % of 1000 bins' })
  })

  it('a hump of Gauss: its mean, its deviation, kurtosis 3', () => {
    const power = Float64Array.from({ length: 1001 }, (_, k) => Math.exp(-(((k - 420) / 35) ** 2) / 2))
    const features = spectralFeatures(power, 2)!
    close(features.centroidHz, 840, { rel: 1e-9, because: 'closed form, tails of 12 deviations' })
    close(features.spreadHz, 70, { rel: 1e-9, because: 'closed form' })
    close(features.skewness, 0, { abs: 1e-9, because: 'symmetric' })
    close(features.kurtosis, 3, { rel: 1e-9, because: 'closed form' })
  })
})

describe('spectralFeatures of noise', () => {
  it('a single periodogram of white noise has flatness exp(−γ) = 0.5615', () => {
    const power = powerSpectrum(whiteNoise('flat', 2 ** 20), 'rectangular')
    close(spectralFeatures(power, 1)!.flatness, 0.56146, { abs: 0.003, because: '524 288 bins; Euler’s constant' })
  })

  it('8 independent frames averaged have flatness exp(ψ(8))/8 = 0.9382', () => {
    const options = { segmentLength: 2 ** 16, overlap: 0, window: 'rectangular', detrend: 'none' } as const
    const { density, segmentCount } = welch(whiteNoise('flat 8', 2 ** 19), 8000, options)!
    expect(segmentCount).toBe(8)
    close(spectralFeatures(density, 1)!.flatness, 0.9382, { abs: 0.003, because: '32 768 bins' })
  })
})

describe('spectralFeatures beside Meyda 5.6.3 (centroid and spread in bins, roll-off in Hz, on amplitudes)', () => {
  const size = 1024
  const rateHz = 48_000
  const frames = ['a', 'b', 'c'].map((seed) => {
    const tone = sine(3000, rateHz, size, 0.4)
    return whiteNoise(seed, size, 0.1).map((v, n) => v + tone[n]!)
  })

  it.each(frames.map((frame, number) => ({ frame, number })))('agrees on frame $number', ({ frame }) => {
    const window = windowSamples('hann', size)
    Object.assign(Meyda, { bufferSize: size, sampleRate: rateHz, windowingFunction: 'rect' })
    const theirs = Meyda.extract(
      ['spectralCentroid', 'spectralSpread', 'spectralSkewness', 'spectralFlatness', 'spectralRolloff'],
      frame.map((v, n) => v * window[n]!),
    )!
    const power = powerSpectrum(frame)
    power[0]! *= 2 // Meyda has both sides of no bin, we of all but DC
    const binHz = rateHz / size
    const ours = spectralFeatures(power, binHz, {
      weighting: 'amplitude',
      fromHz: 0,
      toHz: rateHz / 2 - binHz, // it leaves the Nyquist bin out
      rolloffShare: 0.99,
    })!
    const because = 'its spectrum is in single precision'
    close(ours.centroidHz, theirs.spectralCentroid! * binHz, { rel: 1e-5, because })
    close(ours.spreadHz, theirs.spectralSpread! * binHz, { rel: 1e-5, because })
    close(ours.skewness, theirs.spectralSkewness!, { abs: 1e-4, because })
    close(ours.flatness, theirs.spectralFlatness!, { rel: 1e-5, because })
    close(ours.rolloffHz, theirs.spectralRolloff!, {
      abs: 2.1 * binHz,
      because: 'it counts from the top, in wider bins',
    })
  })
})

describe('spectralFeatures in general', () => {
  it('gain changes nothing, seed 6', () => {
    const power = powerSpectrum(whiteNoise('gain', 512))
    const plain = spectralFeatures(power, 4)!
    fc.assert(
      fc.property(fc.double({ min: -12, max: 12, noNaN: true }), (decades) => {
        const changed = spectralFeatures(
          power.map((p) => p * 10 ** decades),
          4,
        )!
        for (const key of Object.keys(plain) as (keyof typeof plain)[]) {
          close(changed[key], plain[key]!, {
            abs: 1e-6 * (1 + Math.abs(plain[key]!)),
            because: 'a ratio, but for rounding',
          })
        }
      }),
      { seed: 6, numRuns: 30 },
    )
  })

  it('weighs only the bins asked for', () => {
    const power = new Float64Array(101).fill(1)
    power[90] = 1e6
    const features = spectralFeatures(power, 10, { fromHz: 200, toHz: 400 })!
    close(features.centroidHz, 300, { rel: 1e-12, because: 'flat from 200 to 400 Hz' })
    close(features.flatness, 1, { rel: 1e-12, because: 'flat from 200 to 400 Hz' })
  })

  it('flatness holds for bins of any size, where a plain product would leave what a number holds', () => {
    const power = Float64Array.from({ length: 2001 }, (_, k) => 10 ** (((k * 37) % 240) - 120))
    const logs = Array.from(power.subarray(1), Math.log10)
    const meanLog = logs.reduce((a, b) => a + b) / 2000
    const mean = power.subarray(1).reduce((a, b) => a + b) / 2000
    close(spectralFeatures(power, 1)!.flatness, 10 ** meanLog / mean, { rel: 1e-9, because: 'by definition' })
  })

  it('silence has no shape', () => {
    expect(spectralFeatures(new Float64Array(65), 10)).toBeNull()
  })

  it.each([
    { power: [1, 2, Number.NaN], options: {}, message: 'bin 2 holds NaN' },
    { power: [1, -2, 1], options: {}, message: 'bin 1 holds -2' },
    { power: [1, 2], options: {}, message: 'fewer than 2 of 2 bins' },
    { power: [1, 2, 3, 4], options: { fromHz: 20, toHz: 10 }, message: '20 to 10 Hz' },
    { power: [1, 2, 3, 4], options: { rolloffShare: 1.2 }, message: 'rolloffShare is 1.2' },
  ])('refuses: $message', ({ power, options, message }) => {
    expect(() => spectralFeatures(Float64Array.from(power), 10, options)).toThrow(message)
  })
})
