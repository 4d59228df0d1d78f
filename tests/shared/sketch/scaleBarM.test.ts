import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { scaleBarM } from '../../../shared/sketch/scaleBarM'
import { close } from '../../support/close'

describe('a scale bar', () => {
  it('is the longest round length that fits', () => {
    const because = '1, 2 or 5 times a power of ten'
    for (const [mostM, lengthM] of [
      [1, 1],
      [1.99, 1],
      [2, 2],
      [4.9, 2],
      [9.99, 5],
      [73, 50],
      [0.07, 0.05],
    ] as const) {
      close(scaleBarM(mostM, 'm'), lengthM, { rel: 1e-12, because })
    }
  })

  it('is round in feet for those who read feet', () => {
    close(scaleBarM(1, 'ft'), 2 * 0.3048, { rel: 1e-12, because: '3.28 ft fit, 2 ft is the longest round length' })
    close(scaleBarM(0.2, 'ft'), 0.1524, { rel: 1e-12, because: '7.9 in fit, and 6 in are half a foot' })
    close(scaleBarM(0.1, 'ft'), 0.0762, { rel: 1e-12, because: '3.9 in fit, and 3 in are a quarter of a foot' })
  })

  it('never is longer than there is room, nor shorter than a third of it (seed 3)', () => {
    const run = fc.property(fc.double({ min: 1e-4, max: 1e6, noNaN: true }), (mostM) => {
      const lengthM = scaleBarM(mostM, 'm')
      expect(lengthM).toBeLessThanOrEqual(mostM * (1 + 1e-9))
      expect(lengthM).toBeGreaterThan(mostM / 3)
    })
    fc.assert(run, { seed: 3 })
  })
})
