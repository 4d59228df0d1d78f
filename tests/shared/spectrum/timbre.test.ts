import Meyda from 'meyda'
import { describe, expect, it } from 'vitest'
import { timbre } from '../../../shared/spectrum/timbre'
import { close } from '../../support/close'
import { sine, whiteNoise } from './signals'

describe('timbre', () => {
  const rateHz = 8000
  const noise = whiteNoise('timbre', 3 * rateHz, 0.1)

  it('has 13 coefficients, 26 bands and at most 64 frames', () => {
    const { mfcc, mfccSpread, melBandsDb, frameCount } = timbre(noise, rateHz)!
    expect([mfcc.length, mfccSpread.length, melBandsDb.length, frameCount]).toEqual([13, 13, 26, 46])
    expect(timbre(whiteNoise(1, 10 * rateHz), rateHz)!.frameCount).toBe(64)
  })

  it.each([-20, -60, -100])('a gain of %i dB changes nothing', (gainDb) => {
    const plain = timbre(noise, rateHz)!
    const quiet = timbre(
      noise.map((v) => v * 10 ** (gainDb / 20)),
      rateHz,
    )!
    quiet.mfcc.forEach((c, i) => {
      close(c, plain.mfcc[i]!, { abs: 1e-3, because: 'the clip is brought to one level first; single precision' })
    })
  })

  it('puts a tone into the mel band about its frequency', () => {
    // Band i of 26 peaks at (i + 1)/27 of the mel scale from 0 to 4 kHz, mel = 1125·ln(1 + f/700).
    const mel = (f: number) => 1125 * Math.log(1 + f / 700)
    for (const frequencyHz of [400, 1000, 2200]) {
      const { melBandsDb } = timbre(sine(frequencyHz, rateHz, rateHz), rateHz)!
      const loudest = melBandsDb.indexOf(Math.max(...melBandsDb.map((level) => level ?? -300)))
      close(loudest, (27 * mel(frequencyHz)) / mel(4000) - 1, { abs: 0.8, because: 'its peaks lie on whole bins' })
      close(melBandsDb[loudest], 0, { abs: 3.5, because: 'most of the tone lies in one triangle' })
    }
  })

  it('agrees with a cepstrum by definition: the unscaled DCT of the log bands', () => {
    // One frame, so that medians are the values themselves.
    const { mfcc, melBandsDb, frameCount } = timbre(noise.subarray(0, 512), rateHz)!
    expect(frameCount).toBe(1)
    const logs = melBandsDb.map((level) => (Math.LN10 * level!) / 10)
    for (let i = 1; i < 13; i++) {
      const sum = logs.reduce((total, log, j) => total + log * Math.cos((Math.PI * i * (j + 0.5)) / 26), 0)
      close(mfcc[i], 2 * sum, { abs: 1e-3, because: 'bands are in single precision' })
    }
  })

  it('does not mind who else sets Meyda', () => {
    const plain = timbre(noise, rateHz)
    Object.assign(Meyda, { bufferSize: 2048, sampleRate: 44_100, melBands: 40, windowingFunction: 'hanning' })
    Meyda.extract('mfcc', new Float32Array(2048).fill(0.1))
    expect(timbre(noise, rateHz)).toEqual(plain)
  })

  it('one sound at another rate has nearly the same colour', () => {
    const tones = (rate: number) =>
      Float32Array.from({ length: 2 * rate }, (_, n) => {
        let sum = 0
        for (let i = 1; i < 40; i++) sum += Math.sin(2 * Math.PI * (85 * i * (n / rate) + 0.37 * i * i)) / i
        return sum / 10
      })
    const at8 = timbre(tones(8000), 8000)!
    timbre(tones(44_100), 44_100)!
      .mfcc.slice(1)
      .forEach((c, i) => {
        close(c, at8.mfcc[i + 1]!, { abs: 4, because: 'the top band is cut a little; spreads over frames are 3 to 5' })
      })
  })

  it('silence and clips shorter than a frame have no colour', () => {
    expect(timbre(new Float32Array(8000), rateHz)).toBeNull()
    expect(timbre(noise.subarray(0, 511), rateHz)).toBeNull()
    expect(timbre(new Float32Array(0), rateHz)).toBeNull()
  })

  it('frames of digital silence are left out', () => {
    const half = noise.map((v, n) => (n < 1.5 * rateHz ? v : 0))
    expect(timbre(half, rateHz)!.frameCount).toBeLessThan(26)
  })

  it('refuses a low rate and samples that are not finite', () => {
    expect(() => timbre(noise, 4000)).toThrow('sampleRateHz is 4000')
    expect(() => timbre(Float32Array.of(...noise.subarray(0, 600), Number.NaN), rateHz)).toThrow('not finite')
  })
})
