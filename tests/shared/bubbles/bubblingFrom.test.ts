import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type BubblingSigns, bubblingFrom } from '../../../shared/bubbles/bubblingFrom'

const LIVELY: BubblingSigns = { ratePerS: 6, ringShare: 0.4, medianPitchHz: 700, pitchSpreadOctaves: 0.5 }

const signs = fc.record({
  ratePerS: fc.double({ min: 0, max: 80, noNaN: true }),
  ringShare: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
  medianPitchHz: fc.option(fc.double({ min: 150, max: 3000, noNaN: true })),
  pitchSpreadOctaves: fc.option(fc.double({ min: 0, max: 2, noNaN: true })),
})

it('is 0 for nothing, for the rings chance gives, and nearly 1 for lively bubbling', () => {
  expect(bubblingFrom({ ratePerS: 0, ringShare: null, medianPitchHz: null, pitchSpreadOctaves: null })).toBe(0)
  expect(bubblingFrom({ ratePerS: 0.1, ringShare: 0.03, medianPitchHz: 900, pitchSpreadOctaves: null })).toBe(0)
  expect(bubblingFrom(LIVELY)).toBeGreaterThan(0.95)
})

it('stays within 0 to 1 and never falls as the rate rises (seed 3)', () => {
  fc.assert(
    fc.property(signs, fc.double({ min: 0, max: 40, noNaN: true }), (some, more) => {
      const value = bubblingFrom(some)
      expect(value).toBeGreaterThanOrEqual(0)
      expect(value).toBeLessThanOrEqual(1)
      expect(bubblingFrom({ ...some, ratePerS: some.ratePerS + more })).toBeGreaterThanOrEqual(value)
    }),
    { seed: 3 },
  )
})

it('counts the same rings less among many other bursts, when they ring too high or too low, and when all have one pitch', () => {
  const base = { ...LIVELY, ratePerS: 2 }
  const value = bubblingFrom(base)
  expect(bubblingFrom({ ...base, ringShare: 0.1 })).toBeLessThan(value)
  expect(bubblingFrom({ ...base, medianPitchHz: 2400 })).toBeLessThan(value)
  expect(bubblingFrom({ ...base, medianPitchHz: 190 })).toBeLessThan(value)
  expect(bubblingFrom({ ...base, pitchSpreadOctaves: 0.01 })).toBeLessThan(value)
})

it('does not ask that bubbling be irregular: a brisk train of one hole still bubbles', () => {
  expect(bubblingFrom({ ratePerS: 20, ringShare: 0.9, medianPitchHz: 900, pitchSpreadOctaves: 0.08 })).toBeGreaterThan(
    0.95,
  )
})
