import type { PlannedPoint } from '../job/plannedPoints'

/**
 * The points numbered anew from 1, in order along the line; of those at one distance along, the rightmost comes first.
 */
export function renumbered(points: readonly PlannedPoint[]): PlannedPoint[] {
  return [...points]
    .sort((a, b) => a.alongM - b.alongM || a.offsetM - b.offsetM || a.point - b.point)
    .map((each, i) => (each.point === i + 1 ? each : { ...each, point: i + 1 }))
}
