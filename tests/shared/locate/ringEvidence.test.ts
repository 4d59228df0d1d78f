import { expect, it } from 'vitest'
import { logRingLikelihood } from '../../../shared/locate/ringEvidence'
import type { SettingDown } from '../../../shared/locate/settingDown'

/** Signal over floor of a leak below the third of five. */
const overFloorDb = [Float64Array.of(-20, 0, 20, 0, -20)]

it('speaks for a leak where rings are heard above it, and against it where they are heard elsewhere (rule 7)', () => {
  const support = (rates: readonly number[]) =>
    logRingLikelihood(settings(rates), overFloorDb) - logRingLikelihood(settings(rates), [])
  expect(support([0, 0, 12, 0, 0])).toBeGreaterThan(1)
  expect(support([0, 0, 0, 0, 0])).toBeLessThan(0)
  expect(support([12, 0, 0, 0, 0])).toBeLessThan(0)
})

it('lets rings between inlet and leak say little (rule 7)', () => {
  const loss = (passedBy: readonly boolean[]) =>
    logRingLikelihood(settings([0, 0, 12, 0, 0]), overFloorDb, passedBy) -
    logRingLikelihood(settings([8, 0, 12, 0, 0]), overFloorDb, passedBy)
  expect(loss([true, false, false, false, false])).toBeLessThan(loss([]) - 1)
})

it('passes over settings-down without an air-on clip (rule 7)', () => {
  const silent = settings([0, 0, 0, 0, 0]).map((setting) => ({ ...setting, rings: null }))
  expect(logRingLikelihood(silent, overFloorDb)).toBe(0)
})

function settings(rates: readonly number[]): SettingDown[] {
  return rates.map((ratePerS, k) => ({
    point: k + 1,
    alongM: k,
    offsetM: 0,
    cover: 'soil',
    stretch: -1,
    sweepIndex: 0,
    walk: 0,
    on: null,
    off: null,
    rings: { ratePerS, listenedS: 6, bubbling: ratePerS > 0 ? 0.95 : 0.05 },
    detectedNepers: null,
  }))
}
