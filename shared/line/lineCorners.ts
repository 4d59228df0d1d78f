import type { Line, SketchPlace } from './line'
import { linePath } from './linePath'

/**
 * The corners of a line with both its ends, the start first.
 *
 * @returns Two or more in different places; none for a line without a path and without a length. m on the sketch.
 */
export function lineCorners(line: Pick<Line, 'vertices' | 'lengthM'>): SketchPlace[] {
  if (line.vertices === null) {
    return line.lengthM === null
      ? []
      : [
          { xM: 0, yM: 0 },
          { xM: line.lengthM, yM: 0 },
        ]
  }
  const { xM, yM } = linePath(line)
  return Array.from(xM, (x, i) => ({ xM: x, yM: yM[i]! }))
}
