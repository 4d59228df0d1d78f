import type { Reason } from './answer'
import { bandsAtPoints } from './bandsAtPoints'
import type { Facts } from './facts'
import { nearestHeard, neighbours } from './neighbours'
import type { HeardPoint } from './pointEvidence'

/** A band stands out where a point is this much over its floor, dB. Chosen. */
const STANDS_OUT_DB = 6
/** A neighbour is lower when it is lower by this, dB. Chosen: less is how a microphone is set down. */
const LOWER_DB = 1
/** Falls on both sides that differ by no more than this are even, dB. Chosen: as two settings-down differ. */
const EVEN_DB = 3

/**
 * What the levels say round the likeliest place: in which bands the nearest point stands out, and how they fall off
 * toward its neighbours, or that the place lies between two points that are about as loud.
 */
export function levelReasons(facts: Facts): Reason[] {
  const { points, candidate, model } = facts
  const near = nearestHeard(points, candidate.alongM)
  if (!near || near.evidence.overFloorDb === null || near.evidence.bestBandHz === null) return []
  const { overFloorDb, bestBandHz } = near.evidence
  const told = { point: near.point, over_floor_db: overFloorDb, band_hz: bestBandHz }
  if (overFloorDb < STANDS_OUT_DB) return [{ key: 'reason_little_over_floor', values: told }]

  const bands = bandsAtPoints(model)
  const start = bestBand(model.bandKhz, bestBandHz)
  const [left, right] = neighbours(points, near)
  const falls = (from: HeardPoint, to: HeardPoint) => (b: number) => fallDb(bands, from, to, b)
  if (left && right) {
    const range = runOf(bands.get(near.point)!, start, [falls(near, left), falls(near, right)])
    if (range) {
      const [leftDb, rightDb] = [left, right].map((flank) => meanOver(range, falls(near, flank))) as [number, number]
      const values = {
        ...bandRange(facts, range),
        point: near.point,
        left: left.point,
        left_db: leftDb,
        right: right.point,
        right_db: rightDb,
      }
      const isEven = Math.abs(leftDb - rightDb) <= EVEN_DB
      return [standing(told), { key: isEven ? 'reason_falls_evenly' : 'reason_falls_both_sides', values }]
    }
  }
  return [standing(told), ...betweenTwo(facts, near, bands, start)]
}

function standing(values: Reason['values']): Reason {
  return { key: 'reason_stands_out', values }
}

/** "Bands 400 to 1000 Hz are about as loud at points 6 and 7, and lower at 5 and 8": the place lies between. */
function betweenTwo(
  facts: Facts,
  near: HeardPoint,
  bands: ReadonlyMap<number, readonly (number | null)[]>,
  start: number,
): Reason[] {
  const { points, candidate } = facts
  const [left, right] = neighbours(points, near)
  const other = candidate.alongM < near.alongM ? left : right
  if (!other) return []
  const [low, high] = other.alongM < near.alongM ? [other, near] : [near, other]
  const before = neighbours(points, low)[0]
  const after = neighbours(points, high)[1]
  if (!before || !after) return []
  const falls = [(b: number) => fallDb(bands, low, before, b), (b: number) => fallDb(bands, high, after, b)]
  const range = runOf(bands.get(near.point)!, start, falls)
  if (!range) return []
  const values = { low: low.point, high: high.point, before: before.point, after: after.point }
  return [{ key: 'reason_falls_beyond_two', values: { ...bandRange(facts, range), ...values } }]
}

function bestBand(bandKhz: Float64Array, hz: number): number {
  return bandKhz.reduce(
    (best, kHz, b) => (Math.abs(kHz * 1000 - hz) < Math.abs(bandKhz[best]! * 1000 - hz) ? b : best),
    0,
  )
}

function fallDb(
  bands: ReadonlyMap<number, readonly (number | null)[]>,
  from: HeardPoint,
  to: HeardPoint,
  b: number,
): number | null {
  const here = bands.get(from.point)?.[b] ?? null
  const there = bands.get(to.point)?.[b] ?? null
  return here === null || there === null ? null : here - there
}

/** The run of bands round the best one that stand out and fall off in every direction asked for. */
function runOf(
  overDb: readonly (number | null)[],
  start: number,
  falls: readonly ((b: number) => number | null)[],
): readonly [number, number] | null {
  const carries = (b: number) => (overDb[b] ?? 0) >= STANDS_OUT_DB && falls.every((fall) => (fall(b) ?? 0) >= LOWER_DB)
  if (!carries(start)) return null
  let low = start
  let high = start
  while (low > 0 && carries(low - 1)) low--
  while (high + 1 < overDb.length && carries(high + 1)) high++
  return [low, high]
}

function meanOver([low, high]: readonly [number, number], fall: (b: number) => number | null): number {
  let sum = 0
  for (let b = low; b <= high; b++) sum += fall(b)!
  return sum / (high - low + 1)
}

function bandRange({ model }: Facts, [low, high]: readonly [number, number]) {
  return { low_band_hz: 1000 * model.bandKhz[low]!, high_band_hz: 1000 * model.bandKhz[high]! }
}
