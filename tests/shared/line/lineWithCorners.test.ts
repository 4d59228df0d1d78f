import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { heldInPlace } from '../../../shared/line/heldInPlace'
import type { SketchPlace } from '../../../shared/line/line'
import { lineCorners } from '../../../shared/line/lineCorners'
import { lineLegs } from '../../../shared/line/lineLegs'
import { linePath } from '../../../shared/line/linePath'
import { lineWithCorners } from '../../../shared/line/lineWithCorners'
import { movedCorner } from '../../../shared/line/movedCorner'
import { placeAlong } from '../../../shared/line/placeAlong'
import { readLineJson } from '../../../shared/line/readLineJson'
import { close } from '../../support/close'

const file = resolve(import.meta.dirname, '../../../demo-audio/line.json')
const DEMO = readLineJson(readFileSync(file, 'utf8'), 'line.json').line
const BARE = readLineJson({}, 'line.json').line
const rounding = { abs: 1e-9, because: 'rounding of a few square roots' }

const place = fc.record({
  xM: fc.double({ min: -50, max: 50, noNaN: true }),
  yM: fc.double({ min: -50, max: 50, noNaN: true }),
})
/** Corners with legs of a decimetre or more. */
const cornerList = fc
  .array(place, { minLength: 2, maxLength: 7 })
  .filter((all) => all.every((each, i) => i === 0 || apart(each, all[i - 1]!) > 0.1))

describe('the corners of a line', () => {
  it('are its path with start and end, along x without a path, and none without a length', () => {
    expect(lineCorners(DEMO)).toHaveLength(4)
    expect(lineCorners({ ...BARE, lengthM: 8 })).toEqual([
      { xM: 0, yM: 0 },
      { xM: 8, yM: 0 },
    ])
    expect(lineCorners(BARE)).toEqual([])
  })

  it('come back from the line drawn through them, which is as long as its legs (seed 31)', () => {
    fc.assert(
      fc.property(cornerList, (corners) => {
        const line = lineWithCorners(BARE, corners)
        expect(lineCorners(line)).toEqual(corners)
        const lengthM = lineLegs(line).reduce((sum, leg) => sum + leg.lengthM, 0)
        close(line.lengthM!, lengthM, rounding)
      }),
      { seed: 31, numRuns: 60 },
    )
  })

  it('take with them what stood at them, and leave the rest at its distance', () => {
    const [start, first, second, end] = lineCorners(DEMO)
    const line = {
      ...DEMO,
      fittings: [
        { atM: 6.35, kind: 'elbow' as const },
        { atM: 8, kind: 'coupling' as const },
      ],
      noises: [{ atM: 13.4, kind: 'pump' as const }],
      airInletM: 6.35,
    }
    const longer = { xM: first!.xM + 1, yM: first!.yM }
    const moved = lineWithCorners(line, [start!, longer, { xM: second!.xM + 1, yM: second!.yM }, end!])
    close(moved.fittings[0]!.atM, 7.35, rounding)
    close(moved.airInletM!, 7.35, rounding)
    expect(moved.fittings[1]).toBe(line.fittings[1])
    close(moved.noises[0]!.atM, moved.lengthM!, rounding)
    const last = moved.stretches.at(-1)!
    close(last.toM, moved.lengthM!, rounding)
  })

  it('leave everything where it was when one is put between two others', () => {
    const corners = lineCorners(DEMO)
    const between = placeAlong(linePath(DEMO), 2)
    const line = lineWithCorners(DEMO, corners.toSpliced(1, 0, between), [0, 2, 3, 4])
    expect(line.fittings).toEqual(DEMO.fittings)
    expect(line.stretches).toEqual(DEMO.stretches)
    close(line.lengthM!, DEMO.lengthM!, rounding)
  })

  it('do not take the ground with them when another leg is drawn', () => {
    const line = lineWithCorners(DEMO, [...lineCorners(DEMO), { xM: 30, yM: 0 }])
    expect(line.stretches).toEqual(DEMO.stretches)
  })

  it('need two different places', () => {
    expect(() => lineWithCorners(BARE, [{ xM: 0, yM: 0 }])).toThrow('two corners or more')
    expect(() =>
      lineWithCorners(BARE, [
        { xM: 1, yM: 1 },
        { xM: 1, yM: 1 },
      ]),
    ).toThrow('no two neighbours in one place')
  })
})

describe('a corner that is moved', () => {
  it('keeps every length when told so, wherever it is pulled (seed 32)', () => {
    fc.assert(
      fc.property(cornerList, fc.nat(), place, (corners, pick, to) => {
        const moved = movedCorner(corners, pick % corners.length, to, true)
        for (let i = 1; i < corners.length; i++) {
          close(apart(moved[i]!, moved[i - 1]!), apart(corners[i]!, corners[i - 1]!), rounding)
        }
      }),
      { seed: 32, numRuns: 100 },
    )
  })

  it('moves alone otherwise (seed 33)', () => {
    fc.assert(
      fc.property(cornerList, fc.nat(), place, (corners, pick, to) => {
        const index = pick % corners.length
        expect(movedCorner(corners, index, to, false)).toEqual(corners.with(index, to))
      }),
      { seed: 33, numRuns: 30 },
    )
  })
})

describe('something beside a line', () => {
  it('stays on its spot of ground while the line is drawn anew (seed 34)', () => {
    const beside = fc.record({
      alongM: fc.double({ min: 0, max: 10, noNaN: true }),
      offsetM: fc.double({ min: -2, max: 2, noNaN: true }),
    })
    fc.assert(
      fc.property(cornerList, beside, (corners, sign) => {
        const before = linePath(DEMO)
        const after = linePath({ vertices: corners })
        const held = heldInPlace(sign, before, after)
        const was = placeAlong(before, sign.alongM, sign.offsetM)
        // Beside a corner the nearest place of the line is the corner itself, and the offset is told square to it.
        const now = placeAlong(after, held.alongM)
        close(apart(was, now), Math.abs(held.offsetM), { abs: 1e-6, because: 'held to a micrometre' })
      }),
      { seed: 34, numRuns: 60 },
    )
  })

  it('is the same thing when nothing moved', () => {
    const sign = { alongM: 3, offsetM: 0.5, note: 'wet' }
    expect(heldInPlace(sign, linePath(DEMO), linePath(DEMO))).toBe(sign)
  })
})

function apart(a: SketchPlace, b: SketchPlace): number {
  return Math.hypot(a.xM - b.xM, a.yM - b.yM)
}
