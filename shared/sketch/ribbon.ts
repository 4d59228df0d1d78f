import type { SketchPlace } from '../line/line'
import type { LinePath } from '../line/linePath'
import { placeAlong } from '../line/placeAlong'

/** A mitre is not drawn longer than this many half widths: a line that turns back would have one without end. */
const LONGEST_MITRE = 2

/**
 * Outline of a ribbon that is centred on the line and follows its bends: along its left side, and back along its right.
 *
 * At a corner the sides meet in a mitre, so that the ribbon keeps its width; inside the bend no side reaches over the
 * line that halves it, so that a short broad ribbon does not fold over itself.
 *
 * @param alongM Rising, two or more, m along; every corner between the first and the last stands in it.
 * @param halfM  Half its width at each, >= 0, m.
 */
export function ribbon(path: LinePath, alongM: readonly number[], halfM: readonly number[]): SketchPlace[] {
  const left: SketchPlace[] = []
  const right: SketchPlace[] = []
  alongM.forEach((along, i) => {
    const half = halfM[i]!
    const bend = nearestBend(path, along)
    const beside = Math.max(along - (alongM[i - 1] ?? along), (alongM[i + 1] ?? along) - along)
    const { outer, inner } = bend === null ? { outer: half, inner: half } : reaches(half, bend, beside)
    const turnsLeft = bend !== null && bend.turnRad > 0
    left.push(placeAlong(path, along, turnsLeft ? inner : outer))
    right.push(placeAlong(path, along, turnsLeft ? -outer : -inner))
  })
  return [...left, ...right.reverse()]
}

interface Bend {
  /** From here to the corner along the line, >= 0, m. */
  readonly awayM: number
  /** Positive to the left. */
  readonly turnRad: number
}

function reaches(half: number, { awayM, turnRad }: Bend, besideM: number): { outer: number; inner: number } {
  const halfTurn = Math.abs(turnRad) / 2
  if (awayM > 1e-9) return { outer: half, inner: Math.min(half, awayM / Math.max(Math.tan(halfTurn), 1e-9)) }
  const mitred = half * Math.min(LONGEST_MITRE, 1 / Math.max(Math.cos(halfTurn), 1e-9))
  return { outer: mitred, inner: Math.min(mitred, besideM / Math.max(Math.sin(halfTurn), 1e-9)) }
}

function nearestBend({ xM, yM, alongM }: LinePath, atM: number): Bend | null {
  let nearest = 0
  for (let i = 1; i + 1 < alongM.length; i++) {
    if (nearest === 0 || Math.abs(alongM[i]! - atM) < Math.abs(alongM[nearest]! - atM)) nearest = i
  }
  if (nearest === 0) return null
  const beforeX = xM[nearest]! - xM[nearest - 1]!
  const beforeY = yM[nearest]! - yM[nearest - 1]!
  const afterX = xM[nearest + 1]! - xM[nearest]!
  const afterY = yM[nearest + 1]! - yM[nearest]!
  const turnRad = Math.atan2(beforeX * afterY - beforeY * afterX, beforeX * afterX + beforeY * afterY)
  return { awayM: Math.abs(alongM[nearest]! - atM), turnRad }
}
