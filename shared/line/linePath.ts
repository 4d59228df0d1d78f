import type { Line } from './line'

/** The line's corners with the distance along at each; made once from a line and then asked often. */
export interface LinePath {
  /** Corners, at least two, no two neighbours in one place, m on the sketch. */
  readonly xM: Float64Array
  readonly yM: Float64Array
  /** Distance along at each corner, rising from 0, m. */
  readonly alongM: Float64Array
}

/**
 * The path of a line, ready to be walked.
 *
 * @param line Its `vertices`, at least two in different places; `null` is a straight line along x.
 * @returns Corners in one place are merged.
 */
export function linePath(line: Pick<Line, 'vertices'>): LinePath {
  const told = line.vertices ?? STRAIGHT
  const corners = told.filter((corner, i) => i === 0 || corner.xM !== told[i - 1]!.xM || corner.yM !== told[i - 1]!.yM)
  if (corners.length < 2) corners.push({ xM: corners[0]!.xM + 1, yM: corners[0]!.yM })
  const alongM = new Float64Array(corners.length)
  for (let i = 1; i < corners.length; i++) {
    const leg = Math.hypot(corners[i]!.xM - corners[i - 1]!.xM, corners[i]!.yM - corners[i - 1]!.yM)
    alongM[i] = alongM[i - 1]! + leg
  }
  return {
    xM: Float64Array.from(corners, (corner) => corner.xM),
    yM: Float64Array.from(corners, (corner) => corner.yM),
    alongM,
  }
}

const STRAIGHT = [
  { xM: 0, yM: 0 },
  { xM: 1, yM: 0 },
]
