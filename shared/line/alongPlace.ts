import type { SketchPlace } from './line'
import type { LinePath } from './linePath'

/**
 * The distance along at which the line comes nearest to a place on the sketch, and how far beside it the place is.
 *
 * The first and the last leg go on straight past the ends, as in `placeAlong`.
 *
 * @returns `offsetM` is positive to the left looking from start to end. The first of equally near places is taken.
 */
export function alongPlace(path: LinePath, place: SketchPlace): { readonly alongM: number; readonly offsetM: number } {
  const legs = path.alongM.length - 1
  let best = { alongM: 0, offsetM: 0 }
  let bestM = Number.POSITIVE_INFINITY
  for (let leg = 0; leg < legs; leg++) {
    const length = path.alongM[leg + 1]! - path.alongM[leg]!
    const x = (path.xM[leg + 1]! - path.xM[leg]!) / length
    const y = (path.yM[leg + 1]! - path.yM[leg]!) / length
    const dx = place.xM - path.xM[leg]!
    const dy = place.yM - path.yM[leg]!
    const from = leg === 0 ? Number.NEGATIVE_INFINITY : 0
    const to = leg === legs - 1 ? Number.POSITIVE_INFINITY : length
    const pastM = Math.min(Math.max(dx * x + dy * y, from), to)
    const awayM = Math.hypot(dx - pastM * x, dy - pastM * y)
    if (awayM < bestM) {
      bestM = awayM
      best = { alongM: path.alongM[leg]! + pastM, offsetM: x * dy - y * dx < 0 ? -awayM : awayM }
    }
  }
  return best
}
