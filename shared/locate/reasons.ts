import { depthAt } from '../line/depthAt'
import type { Reason, Verdict } from './answer'
import type { Facts } from './facts'
import type { HeardPoint } from './pointEvidence'

/** A band stands out where the best point is this much over its floor, dB. */
const BAND_STANDS_OUT_DB = 6

/** What carried the answer, in the order of weight. */
export function reasonsFor(facts: Facts, verdict: Verdict): Reason[] {
  if (verdict === 'no leak heard') return noLeakReasons(facts)
  return [
    ...levelReason(facts),
    ...ringReason(facts),
    ...inletReason(facts),
    ...depthReason(facts),
    ...exitReason(verdict),
  ]
}

function noLeakReasons({ points, line }: Facts): Reason[] {
  const most = highest(points, (point) => point.evidence.overFloorDb)
  const loudest: Reason[] = most
    ? [{ key: 'reason_loudest_is_little', values: { point: most.point, over_floor_db: most.evidence.overFloorDb! } }]
    : []
  return [
    ...loudest,
    { key: line.airInletM === null ? 'reason_not_heard_is_not_tight' : 'reason_try_more_air', values: {} },
  ]
}

/** "400 to 1000 Hz stand 18 dB over the floor at point 7 and fall off to both sides." */
function levelReason({ points, candidate }: Facts): Reason[] {
  const near = nearest(points, candidate.alongM)
  if (!near || near.evidence.overFloorDb === null || near.evidence.bestBandHz === null) return []
  const { overFloorDb, bestBandHz } = near.evidence
  const [left, right] = flanks(points, near)
  const values = { point: near.point, over_floor_db: overFloorDb, band_hz: bestBandHz }
  if (overFloorDb < BAND_STANDS_OUT_DB) return [{ key: 'reason_little_over_floor', values }]
  const lower = (flank: HeardPoint | null) => flank !== null && (flank.evidence.overFloorDb ?? 0) < overFloorDb - 1
  if (lower(left) && lower(right)) {
    return [{ key: 'reason_falls_both_sides', values: { ...values, left: left!.point, right: right!.point } }]
  }
  return [{ key: 'reason_stands_out', values }]
}

/** "38 rings a second at point 7, 3 at point 6." */
function ringReason({ points, candidate }: Facts): Reason[] {
  const heard = points.filter((point) => point.evidence.ringRatePerS !== null)
  const near = nearest(heard, candidate.alongM)
  if (!near) return []
  const others = heard.filter((point) => point !== near)
  const far = highest(others, (point) => Math.abs(point.alongM - near.alongM))
  if (!far || near.evidence.ringRatePerS! <= far.evidence.ringRatePerS!) return []
  return [
    {
      key: 'reason_rings',
      values: {
        point: near.point,
        rate_per_s: near.evidence.ringRatePerS!,
        other: far.point,
        other_rate_per_s: far.evidence.ringRatePerS!,
      },
    },
  ]
}

function inletReason({ line, candidate, spacingM }: Facts): Reason[] {
  if (line.airInletM === null || Math.abs(line.airInletM - candidate.alongM) > 1.5 * spacingM) return []
  return [{ key: 'reason_near_inlet', values: { inlet_m: line.airInletM } }]
}

function depthReason({ line, candidate }: Facts): Reason[] {
  const { depthM, told } = depthAt(line, candidate.alongM)
  return told ? [] : [{ key: 'reason_depth_assumed', values: { depth_m: depthM } }]
}

function exitReason(verdict: Verdict): Reason[] {
  return verdict === 'located' ? [{ key: 'reason_sound_may_leave_beside', values: {} }] : []
}

function nearest(points: readonly HeardPoint[], alongM: number): HeardPoint | null {
  return highest(
    points.filter((point) => point.evidence.clipsUsed > 0),
    (point) => -Math.abs(point.alongM - alongM),
  )
}

function flanks(points: readonly HeardPoint[], near: HeardPoint): [HeardPoint | null, HeardPoint | null] {
  const heard = points.filter((point) => point.evidence.overFloorDb !== null)
  const left = highest(
    heard.filter((point) => point.alongM < near.alongM),
    (point) => point.alongM,
  )
  const right = highest(
    heard.filter((point) => point.alongM > near.alongM),
    (point) => -point.alongM,
  )
  return [left, right]
}

function highest<T>(items: readonly T[], of: (item: T) => number | null): T | null {
  let best: { item: T; value: number } | null = null
  for (const item of items) {
    const value = of(item)
    if (value !== null && (best === null || value > best.value)) best = { item, value }
  }
  return best?.item ?? null
}
