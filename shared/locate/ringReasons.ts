import type { Reason } from './answer'
import type { Facts } from './facts'
import { nearestHeard, neighbours } from './neighbours'

/**
 * "38 bubbles a second ring at point 7, 3 at point 6": the nearest point against its own neighbours. Says nothing where
 * a neighbour rings as much.
 */
export function ringReasons({ points, candidate }: Facts): Reason[] {
  const near = nearestHeard(
    points.filter(({ evidence }) => evidence.ringRatePerS !== null),
    candidate.alongM,
  )
  if (!near) return []
  const rate = near.evidence.ringRatePerS!
  const beside = neighbours(points, near).filter((point) => point !== null && point.evidence.ringRatePerS !== null)
  const [one, other] = beside as [(typeof beside)[0]?, (typeof beside)[0]?]
  if (!one || beside.some((point) => point!.evidence.ringRatePerS! >= rate)) return []
  const values = {
    point: near.point,
    rate_per_s: rate,
    other: one.point,
    other_rate_per_s: one.evidence.ringRatePerS!,
  }
  if (!other) return [{ key: 'reason_rings', values }]
  const both = { ...values, third: other.point, third_rate_per_s: other.evidence.ringRatePerS! }
  return [{ key: 'reason_rings_both_sides', values: both }]
}
