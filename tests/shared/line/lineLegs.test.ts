import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Leg, lineLegs, lineWithLegs } from '../../../shared/line/lineLegs'
import { readLineJson } from '../../../shared/line/readLineJson'
import { close } from '../../support/close'

const file = resolve(import.meta.dirname, '../../../demo-audio/line.json')
const DEMO = readLineJson(readFileSync(file, 'utf8'), 'line.json').line
const BARE = readLineJson({}, 'line.json').line

const legList = fc.array(
  fc.record({
    lengthM: fc.double({ min: 0.1, max: 100, noNaN: true }),
    turnDeg: fc.double({ min: -170, max: 170, noNaN: true }),
  }),
  { minLength: 2, maxLength: 8 },
)

describe('the legs of a line', () => {
  it('are its straight pieces with the turns between them, positive to the left', () => {
    const legs = lineLegs(DEMO)
    expect(legs.map(({ turnDeg }) => turnDeg)).toEqual([0, 90, -90])
    for (const [i, lengthM] of [6.35, 4.05, 3].entries()) {
      close(legs[i]!.lengthM, lengthM, { abs: 1e-12, because: 'rounding of one square root' })
    }
  })

  it('are one straight piece without a path, and none without a length', () => {
    expect(lineLegs({ ...BARE, lengthM: 8 })).toEqual([{ lengthM: 8, turnDeg: 0 }])
    expect(lineLegs(BARE)).toEqual([])
  })

  it('of any lengths and turns come back from the line laid of them (seed 21)', () => {
    fc.assert(
      fc.property(legList, (told) => {
        const legs = lineLegs(lineWithLegs(BARE, told))
        expect(legs.length).toBe(told.length)
        for (const [i, leg] of legs.entries()) {
          const turned = i === 0 ? 0 : told[i]!.turnDeg
          close(leg.lengthM, told[i]!.lengthM, { abs: 1e-9, because: 'sums of up to eight legs of 100 m' })
          close(leg.turnDeg, turned, { abs: 1e-6, because: 'the angle of a leg of 0.1 m at 1e-12 m' })
        }
      }),
      { seed: 21 },
    )
  })
})

describe('a line with other legs', () => {
  const longer: Leg[] = lineLegs(DEMO).with(0, { lengthM: 7.35, turnDeg: 0 })

  it('starts where it started, in the same direction, and is as long as its legs together', () => {
    const line = lineWithLegs(DEMO, longer)
    expect(line.vertices![0]).toEqual(DEMO.vertices![0])
    close(line.vertices![1]!.xM, 7.35, { abs: 1e-12, because: 'rounding' })
    close(line.lengthM, 14.4, { abs: 1e-12, because: 'rounding' })
  })

  it('takes corners, end and the last stretch along, and leaves what was measured from the start', () => {
    const line = lineWithLegs(DEMO, longer)
    const at = line.fittings.map(({ atM }) => Math.round(atM * 1e6) / 1e6)
    expect(at).toEqual([7.35, 11.4, 14.4])
    expect(line.stretches.map(({ fromM, toM }) => [fromM, Math.round(toM * 1e6) / 1e6])).toEqual([
      [0, 4.6],
      [4.6, 9.2],
      [9.2, 14.4],
    ])
    expect(line.airInletM).toBe(-1.2)
    expect(line.noises).toEqual(DEMO.noises)
  })

  it('that are the same is the same line but for rounding', () => {
    const line = lineWithLegs(DEMO, lineLegs(DEMO))
    for (const [i, { xM, yM }] of line.vertices!.entries()) {
      close(Math.hypot(xM - DEMO.vertices![i]!.xM, yM - DEMO.vertices![i]!.yM), 0, { abs: 1e-12, because: 'rounding' })
    }
  })

  it('may be one straight leg where only a length was told', () => {
    expect(lineWithLegs({ ...BARE, lengthM: 8 }, [{ lengthM: 9, turnDeg: 0 }])).toMatchObject({
      lengthM: 9,
      vertices: null,
    })
  })

  it.each([[[]], [[{ lengthM: 0, turnDeg: 0 }]], [[{ lengthM: 1, turnDeg: Number.NaN }]]])(
    'is refused for the legs %j',
    (legs) => {
      expect(() => lineWithLegs(DEMO, legs)).toThrow(/leg/)
    },
  )
})
