import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { SketchPlace } from '../../../shared/line/line'
import { dragStepM } from '../../../shared/sketch/dragStepM'
import { gridStepM } from '../../../shared/sketch/gridStepM'
import { type SnapOf, snapCorner } from '../../../shared/sketch/snapCorner'
import { close } from '../../support/close'

const at = (xM: number, yM: number): SketchPlace => ({ xM, yM })
const OF: SnapOf = {
  place: at(0, 0),
  before: [at(6, 0), at(0, 0)],
  after: [],
  turnsDeg: [90],
  axes: true,
  reachM: 0.4,
  stepM: 0.1,
}
const rounding = { abs: 1e-9, because: 'rounding' }

/** Turn at the corner before, degrees, positive to the left. */
function turnDeg(place: SketchPlace, [pivot, beyond]: readonly SketchPlace[]): number {
  const before = Math.atan2(pivot!.yM - beyond!.yM, pivot!.xM - beyond!.xM)
  const after = Math.atan2(place.yM - pivot!.yM, place.xM - pivot!.xM)
  const turn = ((after - before) * 180) / Math.PI
  return turn - 360 * Math.round(turn / 360)
}

describe('a corner under a finger', () => {
  it('is drawn to a right angle and a round length', () => {
    const { place, before } = snapCorner({ ...OF, place: at(6.3, 4.04) })
    close(place.xM, 6, rounding)
    close(place.yM, 4, rounding)
    expect(before).toBe(true)
  })

  it('is drawn to an angle that was told, to either side', () => {
    for (const side of [1, -1]) {
      const { place } = snapCorner({ ...OF, turnsDeg: [90, 22.5], place: at(9, side * 1.35) })
      close(turnDeg(place, OF.before), side * 22.5, rounding)
    }
  })

  it('out of reach keeps its direction, with a round length', () => {
    const { place, before } = snapCorner({ ...OF, place: at(8.02, 2.02) })
    expect(before).toBe(false)
    close(turnDeg(place, OF.before), 45, rounding)
    close(Math.hypot(place.xM - 6, place.yM), 2.9, rounding)
  })

  it('between two legs is drawn to where both are square', () => {
    const { place, before, after } = snapCorner({
      ...OF,
      place: at(6.2, 4.3),
      after: [at(10, 4), at(10, 8)],
      stepM: 0.01,
    })
    expect([before, after]).toEqual([true, true])
    close(place.xM, 6, rounding)
    close(place.yM, 4, rounding)
  })

  it('of the first leg follows the paper, and nothing at all over a photo', () => {
    const first = { ...OF, before: [at(0, 0)], place: at(5, 0.2) }
    expect(snapCorner(first).place).toEqual(at(5, 0))
    expect(snapCorner({ ...first, axes: false }).before).toBe(false)
  })

  it('never makes a leg of no length', () => {
    const { place } = snapCorner({ ...OF, place: at(6.01, 0) })
    close(place.xM, 6.1, rounding)
  })

  it('is never taken further than it may be drawn, and is drawn to nothing new the second time (seed 41)', () => {
    const corner = fc.record({
      xM: fc.double({ min: -20, max: 20, noNaN: true }),
      yM: fc.double({ min: -20, max: 20, noNaN: true }),
    })
    fc.assert(
      fc.property(corner, (place) => {
        fc.pre(Math.hypot(place.xM - 6, place.yM) > 1)
        const once = snapCorner({ ...OF, place })
        const away = Math.hypot(once.place.xM - place.xM, once.place.yM - place.yM)
        expect(away).toBeLessThanOrEqual(Math.hypot(OF.reachM, OF.stepM / 2) + 1e-9)
        const twice = snapCorner({ ...OF, place: once.place })
        close(twice.place.xM, once.place.xM, rounding)
        close(twice.place.yM, once.place.yM, rounding)
      }),
      { seed: 41, numRuns: 200 },
    )
  })
})

describe('steps', () => {
  it('of a dragged length are round, and at least as wide as a finger is exact', () => {
    expect(dragStepM(30, 'm')).toBe(0.1)
    expect(dragStepM(300, 'm')).toBe(0.01)
    close(dragStepM(30, 'ft'), (6 / 12) * 0.3048, { abs: 1e-12, because: 'six inches; 1 ft = 0.3048 m exactly' })
    expect(dragStepM(0.001, 'm')).toBe(10)
  })

  it('of a grid are round and never too close (seed 42)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 2000, noNaN: true }), fc.constantFrom('m', 'ft'), (pxPerM, unit) => {
        const stepM = gridStepM(pxPerM, unit as 'm' | 'ft')
        expect(stepM * pxPerM).toBeGreaterThan(21.9)
        expect(stepM * pxPerM).toBeLessThan(22 * 2.51)
        const steps = stepM / (unit === 'ft' ? 0.3048 : 1)
        const leading = steps / 10 ** Math.floor(Math.log10(steps) + 1e-9)
        expect([1, 2, 5].some((each) => Math.abs(each - leading) < 1e-6)).toBe(true)
      }),
      { seed: 42, numRuns: 100 },
    )
  })
})
