import type { SketchPlace } from './line'

/** How far a tape over rough ground is read wrong, standard deviation, m. Chosen: common practice, no source. */
export const TAPE_SD_M = 0.02

/**
 * How far off a place may be that is found again by two tapes, with 95 % each way in the worst direction, m.
 *
 * Two ranges with unit vectors u1 and u2 to the place have the information UᵀU/σ², whose lesser eigenvalue is 1 − |cos θ| for
 * tapes that cross at the angle θ: σ/√(1 − |cos θ|) in the worst direction, and 1.96 times that for 95 %.
 *
 * @returns Infinity where the tapes lie in one line, or one of them has no length.
 */
export function tapeErrorM(first: SketchPlace, second: SketchPlace, place: SketchPlace, sdM = TAPE_SD_M): number {
  const [ax, ay] = [place.xM - first.xM, place.yM - first.yM]
  const [bx, by] = [place.xM - second.xM, place.yM - second.yM]
  const cosine = Math.abs(ax * bx + ay * by) / (Math.hypot(ax, ay) * Math.hypot(bx, by))
  const least = 1 - cosine
  return least > 1e-9 ? (1.96 * sdM) / Math.sqrt(least) : Number.POSITIVE_INFINITY
}
