import fc from 'fast-check'
import { expect, it } from 'vitest'
import { tapeDistance } from '../../../shared/line/tapeDistance'
import { close } from '../../support/close'

const POINTS = [7, 5, 6].map((point) => ({ point, alongM: point - 1 })) // in no order: 5 at 4 m, 6 at 5 m, 7 at 6 m
const ROUNDING = { abs: 1e-12, because: 'one subtraction' }

it('runs from the nearest point toward the point on the other side', () => {
  const past = tapeDistance(5.31, POINTS)
  expect(past).toMatchObject({ key: 'tape_past_point', values: { point: 6, toward: 7 } })
  close(past.values.distance_m, 0.31, ROUNDING)
  const short = tapeDistance(5.8, POINTS)
  expect(short).toMatchObject({ key: 'tape_before_point', values: { point: 7, toward: 6 } })
  close(short.values.distance_m, 0.2, ROUNDING)
})

it('is at a point within a centimetre of it', () => {
  expect(tapeDistance(5.009, POINTS)).toEqual({ key: 'tape_at_point', values: { point: 6 } })
  expect(tapeDistance(3.995, POINTS)).toEqual({ key: 'tape_at_point', values: { point: 5 } })
  expect(tapeDistance(5.02, POINTS).key).toBe('tape_past_point')
})

it('says so past the last and before the first point', () => {
  expect(tapeDistance(7.5, POINTS)).toEqual({ key: 'tape_past_last', values: { distance_m: 1.5, point: 7 } })
  expect(tapeDistance(-1, POINTS)).toEqual({ key: 'tape_before_first', values: { distance_m: 5, point: 5 } })
})

it('keeps to the leg of the place where the line turns between the two points', () => {
  // 7 at 6 m, 8 at 7 m; the line turns at 6.35 m: a tape laid straight from 7 to 8 would leave the pipe.
  const points = [...POINTS, { point: 8, alongM: 7 }]
  const before = tapeDistance(6.3, points, [6.35])
  expect(before).toMatchObject({ key: 'tape_past_toward_corner', values: { point: 7, toward: 8 } })
  close(before.values.distance_m, 0.3, ROUNDING)
  const past = tapeDistance(6.45, points, [6.35])
  expect(past).toMatchObject({ key: 'tape_before_toward_corner', values: { point: 8, toward: 7 } })
  close(past.values.distance_m, 0.55, ROUNDING)
  const amid = tapeDistance(6.4, points, [6.45, 6.35])
  expect(amid).toMatchObject({ key: 'tape_round_corner', values: { point: 7, toward: 8 } })
  close(amid.values.distance_m, 0.4, ROUNDING)
  expect(tapeDistance(5.3, points, [6.35]).key).toBe('tape_past_point')
})

it('runs from the line’s start when there is no point', () => {
  expect(tapeDistance(2.5, [])).toEqual({ key: 'tape_from_start', values: { distance_m: 2.5 } })
})

it('never names a point toward itself when points share a place', () => {
  const shared = [...POINTS, { point: 16, alongM: 5 }, { point: 26, alongM: 5.005 }]
  expect(tapeDistance(5.3, shared)).toMatchObject({ values: { point: 6, toward: 7 } })
  expect(tapeDistance(4.7, shared)).toMatchObject({ values: { point: 6, toward: 5 } })
})

it('leads back to the place, whatever the points (seed 10)', () => {
  const place = fc.double({ min: -20, max: 20, noNaN: true })
  fc.assert(
    fc.property(place, fc.uniqueArray(place, { minLength: 1, maxLength: 12 }), (alongM, places) => {
      const points = places.map((at, i) => ({ point: i, alongM: at }))
      const { key, values } = tapeDistance(alongM, points)
      const from = places[values.point!]!
      const sign = { tape_past_last: 1, tape_before_first: -1, tape_at_point: 0, tape_from_start: 0 }[key as string]
      const toward = sign ?? Math.sign(places[values.toward!]! - from)
      close(from + toward * (values.distance_m ?? 0), alongM, { abs: 0.0101, because: 'at a point means within 10 mm' })
    }),
    { seed: 10, numRuns: 300 },
  )
})
