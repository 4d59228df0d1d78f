import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { JobLine } from '../../../shared/job/job'
import type { PlannedPoint } from '../../../shared/job/plannedPoints'
import { readLineJson } from '../../../shared/line/readLineJson'
import { laidPoints } from '../../../shared/sketch/laidPoints'
import { pointsOnLine } from '../../../shared/sketch/pointsOnLine'
import { renumbered } from '../../../shared/sketch/renumbered'
import { stretchesWith } from '../../../shared/sketch/stretchesWith'
import { suggestedSpacing } from '../../../shared/sketch/suggestedSpacing'
import { close } from '../../support/close'

const WHOLE = { fromM: 0, toM: 13.4, spacingM: 2, staying: [] }
const clip = (point: number, alongM: number): JobLine['sweeps'][number]['clips'][number] => ({
  row: {
    point,
    alongM,
    file: `${point}.wav`,
    air: 'on',
    take: 1,
    sharedTake: false,
    sweep: '1',
    offsetM: 0,
    timeS: null,
    contact: null,
    airKpa: null,
    note: '',
    unknown: {},
  },
  sound: null,
  problems: [],
})

describe('points laid at a spacing', () => {
  it('run from end to end, with one at the end where the rest is long', () => {
    expect(laidPoints(WHOLE).map(({ alongM }) => alongM)).toEqual([0, 2, 4, 6, 8, 10, 12, 13.4])
    expect(laidPoints({ ...WHOLE, toM: 12.9 }).map(({ alongM }) => alongM)).toEqual([0, 2, 4, 6, 8, 10, 12])
    expect(laidPoints(WHOLE).map(({ point }) => point)).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
  })

  it('go round those that stay, and are numbered on from them', () => {
    const staying = [{ point: 7, alongM: 4.3, offsetM: 0 }]
    const points = laidPoints({ ...WHOLE, staying })
    expect(points.map(({ alongM }) => alongM)).toEqual([0, 2, 6, 8, 10, 12, 13.4])
    expect(points[0]!.point).toBe(8)
  })

  it('of any length and spacing rise, stay on the line, leave no gap and no number twice (seed 51)', () => {
    const length = fc.double({ min: 0.5, max: 200, noNaN: true })
    fc.assert(
      fc.property(length, fc.double({ min: 0.2, max: 30, noNaN: true }), (toM, spacingM) => {
        const points = laidPoints({ fromM: 0, toM, spacingM, staying: [] })
        const places = points.map(({ alongM }) => alongM)
        expect(places[0]).toBe(0)
        expect(places.at(-1)!).toBeLessThanOrEqual(toM)
        expect(toM - places.at(-1)!).toBeLessThanOrEqual(spacingM / 2 + 1e-9)
        for (let i = 1; i < places.length; i++) {
          expect(places[i]! - places[i - 1]!).toBeGreaterThan(0)
          expect(places[i]! - places[i - 1]!).toBeLessThanOrEqual(spacingM + 1e-6)
        }
        expect(new Set(points.map(({ point }) => point)).size).toBe(points.length)
      }),
      { seed: 51, numRuns: 100 },
    )
  })

  it('need a spacing and a part, and have a highest number', () => {
    expect(() => laidPoints({ ...WHOLE, spacingM: 0 })).toThrow('a spacing above 0')
    expect(() => laidPoints({ ...WHOLE, toM: 0 })).toThrow('from < to')
    expect(() => laidPoints({ ...WHOLE, spacingM: 1e-4 })).toThrow('more than 10000 points')
  })
})

describe('points numbered anew', () => {
  it('count up along the line from 1, each staying where it is (seed 52)', () => {
    const some = fc.uniqueArray(
      fc.record({
        point: fc.integer({ min: -50, max: 500 }),
        alongM: fc.double({ min: -5, max: 50, noNaN: true }),
        offsetM: fc.constantFrom(0, 0.5, -0.5),
      }),
      { selector: ({ point }) => point, maxLength: 30 },
    )
    fc.assert(
      fc.property(some, (points) => {
        const fresh = renumbered(points)
        expect(fresh.map(({ point }) => point)).toEqual(points.map((_, i) => i + 1))
        expect(fresh.every(({ alongM }, i) => i === 0 || alongM >= fresh[i - 1]!.alongM)).toBe(true)
        const places = (all: readonly PlannedPoint[]) => all.map(({ alongM, offsetM }) => `${alongM} ${offsetM}`).sort()
        expect(places(fresh)).toEqual(places(points))
        expect(renumbered(fresh)).toEqual(fresh)
      }),
      { seed: 52, numRuns: 60 },
    )
  })
})

describe('the points of a line', () => {
  it('are those laid and those with clips, each once, where its clips say', () => {
    const points = pointsOnLine({
      plannedPoints: [
        { point: 1, alongM: 0, offsetM: 0 },
        { point: 2, alongM: 2, offsetM: 0 },
        { point: 3, alongM: 1, offsetM: 0.5 },
      ],
      sweeps: [{ id: 's', name: '1', clips: [clip(2, 2.2), clip(2, 2.4), clip(9, 5)], problems: [] }],
    })
    expect(points).toEqual([
      { point: 1, alongM: 0, offsetM: 0, clipCount: 0 },
      { point: 3, alongM: 1, offsetM: 0.5, clipCount: 0 },
      { point: 2, alongM: 2.2, offsetM: 0, clipCount: 2 },
      { point: 9, alongM: 5, offsetM: 0, clipCount: 1 },
    ])
  })
})

describe('the suggested spacing', () => {
  const line = (fields: object) => readLineJson({ length_m: 10, ...fields }, 'line.json').line

  it('is two depths at first and one depth near the place, by the shallowest cover', () => {
    expect(suggestedSpacing(line({ depth_m: 0.6 }))).toEqual({
      coarseM: 1.2,
      fineM: 0.6,
      depthM: 0.6,
      depthTold: true,
    })
    const slab = { from_m: 0, to_m: 4, cover: 'slab', depth_m: 0.3 }
    expect(suggestedSpacing(line({ depth_m: 0.6, stretches: [slab] })).coarseM).toBe(0.6)
    expect(suggestedSpacing(line({})).depthTold).toBe(false)
  })

  it('puts no leak more than 3 dB down at its nearest point, by spreading alone', () => {
    const { coarseM, depthM } = suggestedSpacing(line({ depth_m: 0.5 }))
    const downDb = 20 * Math.log10(Math.hypot(coarseM / 2, depthM) / depthM)
    close(downDb, 10 * Math.log10(2), { abs: 1e-9, because: 'closed form: half a spacing is one depth' })
  })
})

describe('a stretch laid over others', () => {
  it('cuts away what lies under it, so that every place has one cover (seed 53)', () => {
    const stretch = fc
      .record({ a: fc.integer({ min: 0, max: 40 }), b: fc.integer({ min: 0, max: 40 }) })
      .filter(({ a, b }) => a !== b)
      .map(({ a, b }) => ({
        fromM: Math.min(a, b),
        toM: Math.max(a, b),
        cover: 'grass' as const,
        depthM: null,
        digCostPerM: null,
      }))
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 1, maxLength: 8 }), (told) => {
        let laid: ReturnType<typeof stretchesWith> = []
        for (const each of told) laid = stretchesWith(laid, each)
        for (let i = 1; i < laid.length; i++) expect(laid[i]!.fromM).toBeGreaterThanOrEqual(laid[i - 1]!.toM)
        for (let x = 0.5; x < 40; x++) {
          const covered = (all: typeof laid) => all.some(({ fromM, toM }) => fromM < x && x < toM)
          expect(covered(laid)).toBe(covered(told))
        }
        expect(laid).toContain(told.at(-1))
      }),
      { seed: 53, numRuns: 60 },
    )
  })
})
