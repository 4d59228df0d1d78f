import { expect, it } from 'vitest'
import type { FoundRings } from '../../../shared/bubbles/findRings'
import { minnaertPitchHz } from '../../../shared/bubbles/minnaert'
import type { Ring } from '../../../shared/bubbles/ring'
import { summariseRings } from '../../../shared/bubbles/summariseRings'
import { close } from '../../support/close'

const ring = (timeS: number, pitchHz: number): Ring => ({
  timeS,
  pitchHz,
  decayS: 0.01,
  tonality: 0.8,
  strengthDb: 15,
})
const NOTHING: FoundRings = { rings: [], burstTimesS: [], ringingBurstCount: 0, durationS: 6 }

it('counts rings and bursts a second and takes the middle of everything else', () => {
  const rings = [ring(0.5, 500), ring(1, 1000), ring(2, 2000), ring(3, 4000), ring(4, 250)]
  const summary = summariseRings({
    rings,
    burstTimesS: [0.5, 1, 1.5, 2, 3, 3.5, 4, 4.5],
    ringingBurstCount: 5,
    durationS: 5,
  })
  expect(summary).toMatchObject({
    ratePerS: 1,
    medianPitchHz: 1000,
    medianDecayS: 0.01,
    tonality: 0.8,
    medianStrengthDb: 15,
    burstRatePerS: 1.6,
    ringShare: 0.625,
    assumedPressurePa: 101_325,
    slugRateHz: null,
  })
  close(summary.pitchSpreadOctaves, 1.4826, { abs: 1e-9, because: 'the middle distance from the middle is an octave' })
})

it('reads the radius from the middle pitch at the pressure it states', () => {
  const found = { ...NOTHING, rings: [ring(1, minnaertPitchHz(0.003))], burstTimesS: [1], ringingBurstCount: 1 }
  close(summariseRings(found).medianRadiusM, 0.003, { rel: 1e-12, because: 'the inverse of Minnaert' })
  // 20 psi gauge: the same pitch means a bubble 1.53653 times as wide.
  const inside = summariseRings(found, 101_325 + 20 * 6894.757)
  close(inside.medianRadiusM, 0.003 * 1.53653, { rel: 1e-5, because: 'pitch grows with the root of the pressure' })
  expect(inside.assumedPressurePa).toBeCloseTo(239_220, 0)
})

it('has null, never NaN, for what no ring can say', () => {
  expect(summariseRings(NOTHING)).toEqual({
    ratePerS: 0,
    medianPitchHz: null,
    pitchSpreadOctaves: null,
    medianDecayS: null,
    tonality: null,
    medianStrengthDb: null,
    medianRadiusM: null,
    assumedPressurePa: 101_325,
    burstRatePerS: 0,
    ringShare: null,
    regularity: null,
    slugRateHz: null,
  })
  expect(summariseRings({ ...NOTHING, durationS: 0 }).ratePerS).toBe(0)
})

it('names no spread of fewer than five pitches', () => {
  const rings = [ring(1, 500), ring(2, 510), ring(3, 505), ring(4, 503)]
  expect(summariseRings({ ...NOTHING, rings }).pitchSpreadOctaves).toBeNull()
})
