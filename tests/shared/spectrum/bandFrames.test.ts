import { describe, expect, it } from 'vitest'
import { bandFrames } from '../../../shared/spectrum/bandFrames'
import { bandShares } from '../../../shared/spectrum/bandShares'
import { powerSpectrum } from '../../../shared/spectrum/powerSpectrum'
import { THIRD_OCTAVE_BANDS } from '../../../shared/spectrum/thirdOctaveBands'
import { close } from '../../support/close'
import { whiteNoise } from './signals'

const bands = THIRD_OCTAVE_BANDS.slice(9, 18) // 500 Hz to 3.15 kHz

describe('bandFrames', () => {
  it.each([
    { rateHz: 12_000, seconds: 1, frameS: 1024 / 12_000, name: 'frames that are a power of two' },
    { rateHz: 11_025, seconds: 1, frameS: 0.085, name: 'padded frames' },
    { rateHz: 11_025, seconds: 0.085, frameS: 0.085, name: 'a single frame' },
    { rateHz: 11_025, seconds: 0.3, frameS: 0.085, name: 'an odd count of frames' },
  ])(
    'gives each frame the band powers of its own spectrum, one frame at a time: $name',
    ({ rateHz, seconds, frameS }) => {
      const x = whiteNoise(`frames ${rateHz}`, Math.ceil(seconds * rateHz))
      const { powers } = bandFrames(x, rateHz, bands, frameS)
      const length = 2 * Math.round((rateHz * frameS) / 2)
      const count = powers[0]!.length
      const step = count > 1 ? (x.length - length) / (count - 1) : 0
      expect(step).toBeLessThanOrEqual(0.52 * length)
      for (let frame = 0; frame < count; frame++) {
        const start = Math.round(frame * step)
        const power = powerSpectrum(x.subarray(start, start + length))
        const binHz = rateHz / (2 * (power.length - 1))
        bands.forEach((band, b) => {
          const { firstBin, shares } = bandShares(band, binHz)
          const expected = shares.reduce((sum, share, i) => sum + share * power[firstBin + i]!, 0)
          close(powers[b]![frame], expected, { rel: 1e-10, because: 'two real frames in one complex transform' })
        })
      }
    },
  )

  it('begins with the clip and ends with it', () => {
    const click = new Float32Array(5000)
    click[4600] = 1
    const { powers, hopS } = bandFrames(click, 12_000, bands, 0.1)
    const last = powers[3]!.length - 1
    expect(powers[3]![last]).toBeGreaterThan(0)
    close(hopS * last, 5000 / 12_000 - 0.1, { abs: 1e-9, because: 'the last frame begins a frame before the end' })
  })

  it.each([0.085, 0.06])('states the degrees of freedom that white noise shows, frames of %f s', (frameS) => {
    const rateHz = 12_000
    const { powers, degreesOfFreedom } = bandFrames(whiteNoise('freedom', rateHz * 120), rateHz, bands, frameS)
    bands.forEach((band, b) => {
      const mean = powers[b]!.reduce((sum, p) => sum + p, 0) / powers[b]!.length
      const variance = powers[b]!.reduce((sum, p) => sum + (p - mean) ** 2, 0) / powers[b]!.length
      close(degreesOfFreedom[b], (2 * mean * mean) / variance, {
        rel: 0.15,
        because: `${band.nominalHz} Hz: the variance of some 2800 frames scatters by 3 %, more in narrow bands`,
      })
    })
  })

  it('has no frames of a clip shorter than one', () => {
    expect(bandFrames(new Float32Array(500), 12_000, bands, 0.1).powers.map((p) => p.length)).toEqual(
      bands.map(() => 0),
    )
  })
})
