import type { HeardPoint } from './pointEvidence'

/** The point with a usable clip that lies nearest to a place; `null` without any. */
export function nearestHeard(points: readonly HeardPoint[], alongM: number): HeardPoint | null {
  return closest(
    points.filter((point) => point.evidence.clipsUsed > 0),
    alongM,
  )
}

/** The next points with a level before and after a point; `null` where there is none. */
export function neighbours(
  points: readonly HeardPoint[],
  { alongM }: HeardPoint,
): readonly [HeardPoint | null, HeardPoint | null] {
  const heard = points.filter((point) => point.evidence.overFloorDb !== null)
  return [
    closest(
      heard.filter((point) => point.alongM < alongM),
      alongM,
    ),
    closest(
      heard.filter((point) => point.alongM > alongM),
      alongM,
    ),
  ]
}

function closest(points: readonly HeardPoint[], alongM: number): HeardPoint | null {
  return points.reduce<HeardPoint | null>(
    (best, point) => (best === null || Math.abs(point.alongM - alongM) < Math.abs(best.alongM - alongM) ? point : best),
    null,
  )
}
