import type { SketchPlace } from '../line/line'
import type { LinePath } from '../line/linePath'
import { directionAlong, placeAlong } from '../line/placeAlong'

/** A mitre is not drawn longer than this many half widths: a line that turns back would have one without end. */
const LONGEST_MITRE = 2

/**
 * Outline of a ribbon that is centred on the line and follows its bends: along its left side, and back along its right.
 *
 * @param alongM Rising, two or more, m along. At a corner the sides meet in a mitre, so that the ribbon keeps its width.
 * @param halfM  Half its width at each, >= 0, m.
 */
export function ribbon(path: LinePath, alongM: readonly number[], halfM: readonly number[]): SketchPlace[] {
  const reach = alongM.map((along, i) => halfM[i]! * mitre(path, along))
  const left = alongM.map((along, i) => placeAlong(path, along, reach[i]!))
  const right = alongM.map((along, i) => placeAlong(path, along, -reach[i]!))
  return [...left, ...right.reverse()]
}

/** 1 / cos(half the turn) at a corner, 1 elsewhere. */
function mitre(path: LinePath, alongM: number): number {
  const corner = path.alongM.subarray(1, -1).findIndex((at) => Math.abs(at - alongM) < 1e-9) + 1
  if (corner === 0) return 1
  const middle = directionAlong(path, alongM)
  const after = directionAlong(path, (path.alongM[corner]! + path.alongM[corner + 1]!) / 2)
  return Math.min(LONGEST_MITRE, 1 / Math.max(middle.x * after.x + middle.y * after.y, 1e-9))
}
