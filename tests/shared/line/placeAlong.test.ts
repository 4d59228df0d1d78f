import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { alongPlace } from '../../../shared/line/alongPlace'
import { linePath } from '../../../shared/line/linePath'
import { directionAlong, placeAlong } from '../../../shared/line/placeAlong'
import { close } from '../../support/close'

const corner = (xM: number, yM: number) => ({ xM, yM })
const ROUNDING = { abs: 1e-9, because: 'rounding of a few products of metres' }

/** 10 m to the right, then 4 m up: left is up on the first leg and back on the second. */
const BENT = linePath({ vertices: [corner(0, 0), corner(10, 0), corner(10, 4)] })

const closePlace = (actual: { xM: number; yM: number }, xM: number, yM: number) => {
  close(actual.xM, xM, ROUNDING)
  close(actual.yM, yM, ROUNDING)
}

/** Lines that go right and up only, so that no two of their parts come near each other. */
const risingLine = fc
  .array(fc.tuple(fc.double({ min: 0.1, max: 9, noNaN: true }), fc.double({ min: 0.1, max: 9, noNaN: true })), {
    minLength: 1,
    maxLength: 6,
  })
  .map((steps) => {
    const corners = [corner(0, 0)]
    for (const [x, y] of steps) corners.push(corner(corners.at(-1)!.xM + x, corners.at(-1)!.yM + y))
    return corners
  })

describe('a place along a bent line', () => {
  it('lies on the leg it falls on', () => {
    closePlace(placeAlong(BENT, 0), 0, 0)
    closePlace(placeAlong(BENT, 7), 7, 0)
    closePlace(placeAlong(BENT, 10), 10, 0)
    closePlace(placeAlong(BENT, 12.5), 10, 2.5)
  })

  it('goes on straight before the start and past the end', () => {
    closePlace(placeAlong(BENT, -2), -2, 0)
    closePlace(placeAlong(BENT, 15), 10, 5)
  })

  it('is to the left for a positive offset, looking from start to end', () => {
    closePlace(placeAlong(BENT, 7, 1), 7, 1)
    closePlace(placeAlong(BENT, 12, 1), 9, 2)
    closePlace(placeAlong(BENT, 12, -1), 11, 2)
  })

  it('is offset along the middle of both legs at a corner', () => {
    closePlace(placeAlong(BENT, 10, Math.SQRT2), 9, 1)
    const direction = directionAlong(BENT, 10)
    close(direction.x, Math.SQRT1_2, ROUNDING)
    close(direction.y, Math.SQRT1_2, ROUNDING)
  })

  it('lies on a straight line along x when no path was told', () => {
    closePlace(placeAlong(linePath({ vertices: null }), 3, 0.5), 3, 0.5)
  })

  it('is the same when corners stand twice', () => {
    const twice = linePath({ vertices: [corner(0, 0), corner(0, 0), corner(10, 0), corner(10, 0), corner(10, 4)] })
    expect(twice).toEqual(BENT)
  })

  it('keeps a direction on a line that turns right back on itself', () => {
    const back = linePath({ vertices: [corner(0, 0), corner(5, 0), corner(2, 0)] })
    expect(directionAlong(back, 5)).toEqual({ x: -1, y: 0 })
  })

  it('is the same place, with the offset changed in sign, when the line is told from its other end (seed 7)', () => {
    const offset = fc.double({ min: -3, max: 3, noNaN: true })
    fc.assert(
      fc.property(risingLine, fc.double({ min: -0.5, max: 1.5, noNaN: true }), offset, (vertices, share, offsetM) => {
        const path = linePath({ vertices })
        const back = linePath({ vertices: [...vertices].reverse() })
        const lengthM = path.alongM.at(-1)!
        const place = placeAlong(path, share * lengthM, offsetM)
        closePlace(placeAlong(back, lengthM - share * lengthM, -offsetM), place.xM, place.yM)
      }),
      { seed: 7, numRuns: 200 },
    )
  })
})

describe('the nearest place along a line', () => {
  it('is where a place on the line came from, past the ends too (seed 8)', () => {
    fc.assert(
      fc.property(risingLine, fc.double({ min: -1, max: 2, noNaN: true }), (vertices, share) => {
        const path = linePath({ vertices })
        const alongM = share * path.alongM.at(-1)!
        const found = alongPlace(path, placeAlong(path, alongM))
        close(found.alongM, alongM, { abs: 1e-6, because: 'rounding, magnified where legs meet at a blunt angle' })
        close(found.offsetM, 0, { abs: 1e-6, because: 'rounding' })
      }),
      { seed: 8, numRuns: 200 },
    )
  })

  it('tells how far beside the line a place is, left positive', () => {
    expect(alongPlace(BENT, corner(3, 2))).toEqual({ alongM: 3, offsetM: 2 })
    expect(alongPlace(BENT, corner(3, -2))).toEqual({ alongM: 3, offsetM: -2 })
    expect(alongPlace(BENT, corner(12, 3))).toEqual({ alongM: 13, offsetM: -2 })
    expect(alongPlace(BENT, corner(-4, 1))).toEqual({ alongM: -4, offsetM: 1 })
  })

  it('agrees with walking the line in small steps (seed 9)', () => {
    const place = fc.tuple(fc.double({ min: -5, max: 30, noNaN: true }), fc.double({ min: -5, max: 30, noNaN: true }))
    fc.assert(
      fc.property(risingLine, place, (vertices, [xM, yM]) => {
        const path = linePath({ vertices })
        const found = alongPlace(path, { xM, yM })
        let nearestM = Number.POSITIVE_INFINITY
        for (let alongM = -60; alongM <= path.alongM.at(-1)! + 60; alongM += 0.01) {
          const walked = placeAlong(path, alongM)
          nearestM = Math.min(nearestM, Math.hypot(walked.xM - xM, walked.yM - yM))
        }
        close(Math.abs(found.offsetM), nearestM, { abs: 0.006, because: 'the walk steps 10 mm' })
      }),
      { seed: 9, numRuns: 20 },
    )
  })
})
