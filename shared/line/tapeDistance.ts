/** A marked point on the ground. */
export interface MarkedPoint {
  readonly point: number
  readonly alongM: number
}

/** A tape distance as a key of shared/words and its values, as a reason is. */
export interface TapeDistance {
  readonly key:
    | 'tape_from_start'
    | 'tape_at_point'
    | 'tape_past_point'
    | 'tape_before_point'
    | 'tape_past_toward_corner'
    | 'tape_before_toward_corner'
    | 'tape_round_corner'
    | 'tape_past_last'
    | 'tape_before_first'
  readonly values: Readonly<Record<string, number>>
}

/** Nearer than this is "at" the point. Chosen: nobody lays a tape better. */
const AT_POINT_M = 0.01

/**
 * How to find a place on the line with a tape: from the nearest marked point, toward the point on the place's other
 * side.
 *
 * A tape is laid straight: where the line has a corner between the two points, the tape runs from one that lies on the
 * place's own leg, toward the corner; only when neither does, along the pipe and round the corner.
 *
 * @param alongM   The place, m along.
 * @param points   Points marked on the line, in any order. Of several in one place one is named.
 * @param cornersM Where the line turns, m along, in any order.
 * @returns Metres along the line; without any point, from the line's start.
 * @example tapeDistance(5.31, [{ point: 6, alongM: 5 }, { point: 7, alongM: 6 }])
 *   // { key: 'tape_past_point', values: { distance_m: 0.31, point: 6, toward: 7 } }
 */
export function tapeDistance(
  alongM: number,
  points: readonly MarkedPoint[],
  cornersM: Iterable<number> = [],
): TapeDistance {
  const places = onePerPlace(points)
  if (places.length === 0) return { key: 'tape_from_start', values: { distance_m: alongM } }

  const before = places.filter((point) => point.alongM <= alongM).at(-1)
  const after = places.find((point) => point.alongM > alongM)
  const nearest = !before || (after && after.alongM - alongM < alongM - before.alongM) ? after! : before
  const distanceM = Math.abs(alongM - nearest.alongM)
  if (distanceM <= AT_POINT_M) return { key: 'tape_at_point', values: { point: nearest.point } }

  const values = { distance_m: distanceM, point: nearest.point }
  if (!after) return { key: 'tape_past_last', values }
  if (!before) return { key: 'tape_before_first', values }
  const other = nearest === before ? after : before
  const between = [...cornersM].filter((corner) => corner > before.alongM && corner < after.alongM)
  if (between.length === 0) {
    return {
      key: nearest === before ? 'tape_past_point' : 'tape_before_point',
      values: { ...values, toward: other.point },
    }
  }

  const isOnLeg = ({ alongM: fromM }: MarkedPoint) =>
    between.every((corner) => corner <= Math.min(fromM, alongM) || corner >= Math.max(fromM, alongM))
  const from = [nearest, other].find(isOnLeg)
  if (from === undefined) return { key: 'tape_round_corner', values: { ...values, toward: other.point } }
  return {
    key: from === before ? 'tape_past_toward_corner' : 'tape_before_toward_corner',
    values: {
      distance_m: Math.abs(alongM - from.alongM),
      point: from.point,
      toward: (from === before ? after : before).point,
    },
  }
}

function onePerPlace(points: readonly MarkedPoint[]): MarkedPoint[] {
  const kept: MarkedPoint[] = []
  for (const point of [...points].sort((a, b) => a.alongM - b.alongM || a.point - b.point)) {
    const last = kept.at(-1)
    if (!last || point.alongM - last.alongM > AT_POINT_M) kept.push(point)
  }
  return kept
}
