import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../../shared/base/errors'
import { Random } from '../../../shared/base/random'
import type { SketchPlace } from '../../../shared/line/line'
import { tapeErrorM } from '../../../shared/line/tapeErrorM'
import { trilaterate } from '../../../shared/line/trilaterate'
import { close } from '../../support/close'

const at = (xM: number, yM: number): SketchPlace => ({ xM, yM })

describe('two tapes', () => {
  it('of 3 and 4 from places 5 apart meet at the right angle of that triangle (Pythagoras)', () => {
    const found = trilaterate(at(0, 0), at(5, 0), 3, 4)
    if (found.kind !== 'places') throw new Error('the tapes meet')
    close(found.left.xM, 1.8, { abs: 1e-12, because: 'rounding' })
    close(found.left.yM, 2.4, { abs: 1e-12, because: 'rounding' })
    close(found.right.yM, -2.4, { abs: 1e-12, because: 'rounding' })
  })

  it('give back any place they were laid to, on its own side (seed 9)', () => {
    const number = fc.double({ min: -50, max: 50, noNaN: true })
    const place = fc.record({ xM: number, yM: number })
    fc.assert(
      fc.property(place, place, place, (first, second, mark) => {
        fc.pre(Math.hypot(first.xM - second.xM, first.yM - second.yM) > 0.5)
        const away = (from: SketchPlace) => Math.hypot(mark.xM - from.xM, mark.yM - from.yM)
        const found = trilaterate(first, second, away(first), away(second))
        if (found.kind !== 'places') throw new Error('the tapes meet')
        const cross = (second.xM - first.xM) * (mark.yM - first.yM) - (second.yM - first.yM) * (mark.xM - first.xM)
        const own = cross >= 0 ? found.left : found.right
        const because = 'near the line through both places the root magnifies rounding'
        close(Math.hypot(own.xM - mark.xM, own.yM - mark.yM), 0, { abs: 2e-5, because })
      }),
      { seed: 9, numRuns: 300 },
    )
  })

  it('that do not reach each other say by how much; within a tape reading they just meet', () => {
    expect(trilaterate(at(0, 0), at(10, 0), 3, 4)).toEqual({ kind: 'no place', gapM: 3 })
    expect(trilaterate(at(0, 0), at(2, 0), 9, 4)).toEqual({ kind: 'no place', gapM: -3 })
    const near = trilaterate(at(0, 0), at(10, 0), 6, 3.97)
    expect(near.kind).toBe('places')
    expect(near.kind === 'places' && near.left).toEqual(near.kind === 'places' && near.right)
  })

  it('from one place, or shorter than nothing, are refused', () => {
    expect(() => trilaterate(at(1, 1), at(1, 1), 2, 2)).toThrow(InputError)
    expect(() => trilaterate(at(0, 0), at(1, 1), -1, 2)).toThrow(InputError)
  })
})

describe('the error of a place found again by two tapes', () => {
  it('is that of the tape where they cross square, and without end where they lie in one line', () => {
    close(tapeErrorM(at(0, 0), at(3, 3), at(3, 0), 0.02), 1.96 * 0.02, { abs: 1e-12, because: 'rounding' })
    expect(tapeErrorM(at(0, 0), at(4, 0), at(2, 0))).toBe(Number.POSITIVE_INFINITY)
    expect(tapeErrorM(at(0, 0), at(4, 0), at(0, 0))).toBe(Number.POSITIVE_INFINITY)
  })

  it('is what drawn tapes scatter by in the worst direction (seed 12)', () => {
    const [first, second, place] = [at(0, 0), at(6, 0), at(2, 1.5)]
    const random = new Random('12')
    const sdM = 0.01
    const drawn = Array.from({ length: 4000 }, () => {
      const away = (from: SketchPlace) => Math.hypot(place.xM - from.xM, place.yM - from.yM) + sdM * random.normal()
      const found = trilaterate(first, second, away(first), away(second))
      if (found.kind !== 'places') throw new Error('the tapes meet')
      return [found.left.xM - place.xM, found.left.yM - place.yM] as const
    })
    const mean = (of: (each: readonly [number, number]) => number) => drawn.reduce((sum, d) => sum + of(d), 0) / 4000
    const [xx, yy, xy] = [mean(([x]) => x * x), mean(([, y]) => y * y), mean(([x, y]) => x * y)]
    const worst = Math.sqrt((xx + yy) / 2 + Math.sqrt(((xx - yy) / 2) ** 2 + xy * xy))
    const because = '4000 draws, and the tapes are not quite straight lines'
    close(1.96 * worst, tapeErrorM(first, second, place, sdM), { rel: 0.05, because })
  })
})
