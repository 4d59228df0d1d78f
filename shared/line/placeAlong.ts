import type { SketchPlace } from './line'
import type { LinePath } from './linePath'

/**
 * The place on the sketch at a distance along the line, or beside it.
 *
 * Before the start and past the end the first and the last leg go on straight, because an air inlet or a leak may lie
 * outside the part that was drawn.
 *
 * @param alongM  Any distance, m.
 * @param offsetM Off the line, positive to the left looking from start to end, m. At a corner "left" is square to the
 *   middle of both legs, so that a line told from the other end has its points in the same places.
 */
export function placeAlong(path: LinePath, alongM: number, offsetM = 0): SketchPlace {
  const leg = legAt(path, alongM)
  const { x, y } = legDirection(path, leg)
  const past = alongM - path.alongM[leg]!
  const xM = path.xM[leg]! + past * x
  const yM = path.yM[leg]! + past * y
  if (offsetM === 0) return { xM, yM }
  const direction = directionAlong(path, alongM)
  return { xM: xM - offsetM * direction.y, yM: yM + offsetM * direction.x }
}

/**
 * Unit vector toward the line's end at a distance along; at a corner the middle of both legs (of a line that turns
 * right back on itself: the leg that begins there).
 */
export function directionAlong(path: LinePath, alongM: number): { readonly x: number; readonly y: number } {
  const leg = legAt(path, alongM)
  const after = legDirection(path, leg)
  if (leg === 0 || Math.abs(alongM - path.alongM[leg]!) > CORNER_M) return after
  const before = legDirection(path, leg - 1)
  const x = before.x + after.x
  const y = before.y + after.y
  const length = Math.hypot(x, y)
  return length < 1e-9 ? after : { x: x / length, y: y / length }
}

/** How near a corner counts as at it, m: above what rounding leaves and below what anyone can measure. */
const CORNER_M = 1e-9

/** The leg a distance falls on: 0 before the start, the last one past the end; at a corner the leg that begins there. */
function legAt(path: LinePath, alongM: number): number {
  const last = path.alongM.length - 2
  let leg = 0
  while (leg < last && alongM >= path.alongM[leg + 1]! - CORNER_M) leg++
  return leg
}

function legDirection(path: LinePath, leg: number): { readonly x: number; readonly y: number } {
  const length = path.alongM[leg + 1]! - path.alongM[leg]!
  return { x: (path.xM[leg + 1]! - path.xM[leg]!) / length, y: (path.yM[leg + 1]! - path.yM[leg]!) / length }
}
