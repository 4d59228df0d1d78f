import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../../shared/base/errors'
import { NARROWEST_RATIO, PASS_BAND_LIMITS, passBand } from '../../../shared/listen/passBand'

describe('a pass band', () => {
  it('is in order however it was dragged', () => {
    expect(passBand(900, 300)).toEqual({ lowHz: 300, highHz: 900 })
  })

  it('lies within the limits and is never narrower than a third of an octave (seed 3)', () => {
    const anyHz = fc.double({ min: 1e-3, max: 1e6, noNaN: true })
    fc.assert(
      fc.property(anyHz, anyHz, (aHz, bHz) => {
        const { lowHz, highHz } = passBand(aHz, bHz)
        expect(lowHz).toBeGreaterThanOrEqual(PASS_BAND_LIMITS.lowHz * (1 - 1e-12))
        expect(highHz).toBeLessThanOrEqual(PASS_BAND_LIMITS.highHz * (1 + 1e-12))
        expect(highHz / lowHz).toBeGreaterThanOrEqual(NARROWEST_RATIO * (1 - 1e-12))
      }),
      { seed: 3 },
    )
  })

  it('refuses a frequency that is not above 0', () => {
    expect(() => passBand(0, 300)).toThrow(InputError)
    expect(() => passBand(Number.NaN, 300)).toThrow(InputError)
  })
})
