import { describe, expect, it } from 'vitest'
import { powerSpectrum } from '../../../shared/spectrum/powerSpectrum'
import { spectralSlope } from '../../../shared/spectrum/spectralSlope'
import { close } from '../../support/close'
import { whiteNoise } from './signals'

describe('spectralSlope', () => {
  it.each([-12, -3, 0, 6])('a power law of %f dB an octave has that slope, in any range', (slopeDb) => {
    const power = Float64Array.from({ length: 513 }, (_, k) => (k === 0 ? 0 : 10 ** ((slopeDb * Math.log2(k)) / 10)))
    close(spectralSlope(power, 8), slopeDb, { abs: 1e-9, because: 'an exact line' })
    close(spectralSlope(power, 8, { fromHz: 200, toHz: 2000 }), slopeDb, { abs: 1e-9, because: 'an exact line' })
  })

  it('white noise is level', () => {
    close(spectralSlope(powerSpectrum(whiteNoise(3, 2 ** 16)), 1), 0, {
      abs: 0.1,
      because: '32 768 bins of 5.6 dB scatter',
    })
  })

  it('an empty bin has no level, and so the spectrum no slope', () => {
    expect(spectralSlope(Float64Array.of(1, 1, 0, 1), 10)).toBeNull()
    close(spectralSlope(Float64Array.of(0, 1, 1, 1), 10), 0, { abs: 1e-12, because: 'DC does not count' })
  })

  it('refuses too narrow a range and bins that are no power', () => {
    expect(() => spectralSlope(Float64Array.of(1, 1, 1, 1), 10, { fromHz: 15, toHz: 25 })).toThrow('15 to 25 Hz')
    expect(() => spectralSlope(Float64Array.of(1, 1, 1, 1), 0)).toThrow('bins of 0 Hz')
    expect(() => spectralSlope(Float64Array.of(1, 1, Number.NaN), 10)).toThrow('bin 2 holds NaN')
  })
})
