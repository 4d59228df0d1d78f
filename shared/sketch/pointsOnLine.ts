import type { JobLine } from '../job/job'

/** A point of a line, laid or listened at. */
export interface PointOnLine {
  readonly point: number
  readonly alongM: number
  readonly offsetM: number
  /** Clips in the line's sweeps. */
  readonly clipCount: number
}

/**
 * Every point of a line once, those that were laid and those that clips were taken at, in order along it.
 *
 * Where clips were taken, the first of them says where the point is.
 */
export function pointsOnLine({ plannedPoints = [], sweeps }: Pick<JobLine, 'plannedPoints' | 'sweeps'>): PointOnLine[] {
  const points = new Map<number, PointOnLine>()
  for (const { row } of sweeps.flatMap(({ clips }) => clips)) {
    const before = points.get(row.point)
    const { point, alongM, offsetM } = before ?? row
    points.set(point, { point, alongM, offsetM, clipCount: (before?.clipCount ?? 0) + 1 })
  }
  for (const { point, alongM, offsetM } of plannedPoints) {
    if (!points.has(point)) points.set(point, { point, alongM, offsetM, clipCount: 0 })
  }
  return [...points.values()].sort((a, b) => a.alongM - b.alongM || a.point - b.point)
}
