import { depthAt } from '../line/depthAt'
import type { Reason, Verdict } from './answer'
import type { Facts } from './facts'
import { levelReasons } from './levelReasons'
import type { HeardPoint } from './pointEvidence'
import { ringReasons } from './ringReasons'
import { trustReasons } from './trustReasons'
import { whatToTry } from './whatToTry'

/** What carried the answer, in the order of weight. */
export function reasonsFor(facts: Facts, verdict: Verdict): Reason[] {
  if (verdict === 'no leak heard') {
    const notTight = { key: 'reason_not_heard_is_not_tight', values: {} }
    return [...loudestReason(facts), ...untoldInletReason(facts), notTight, ...whatToTry(facts)]
  }
  return [
    ...levelReasons(facts),
    ...ringReasons(facts),
    ...trustReasons(facts),
    ...inletReason(facts),
    ...untoldInletReason(facts),
    ...depthReason(facts),
    ...exitReason(verdict),
  ]
}

function loudestReason({ points }: Facts): Reason[] {
  const most = points.reduce<HeardPoint | null>(
    (best, point) =>
      (point.evidence.overFloorDb ?? Number.NEGATIVE_INFINITY) >
      (best?.evidence.overFloorDb ?? Number.NEGATIVE_INFINITY)
        ? point
        : best,
    null,
  )
  if (!most) return []
  return [{ key: 'reason_loudest_is_little', values: { point: most.point, over_floor_db: most.evidence.overFloorDb! } }]
}

function inletReason({ line, untoldInletM, candidate, spacingM }: Facts): Reason[] {
  if (untoldInletM !== null || line.airInletM === null || Math.abs(line.airInletM - candidate.alongM) > 1.5 * spacingM)
    return []
  return [{ key: 'reason_near_inlet', values: { inlet_m: line.airInletM } }]
}

function untoldInletReason({ untoldInletM, range }: Facts): Reason[] {
  if (untoldInletM === null) return []
  return [{ key: untoldInletM < range[0] ? 'reason_untold_inlet_start' : 'reason_untold_inlet_end', values: {} }]
}

function depthReason({ line, candidate }: Facts): Reason[] {
  const { depthM, told } = depthAt(line, candidate.alongM)
  return told ? [] : [{ key: 'reason_depth_assumed', values: { depth_m: depthM } }]
}

function exitReason(verdict: Verdict): Reason[] {
  return verdict === 'located' ? [{ key: 'reason_sound_may_leave_beside', values: {} }] : []
}
