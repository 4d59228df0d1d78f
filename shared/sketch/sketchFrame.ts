import type { Line } from '../line/line'
import { type LinePath, linePath } from '../line/linePath'
import { lineRange } from '../line/lineRange'
import { placeAlong } from '../line/placeAlong'

/** What every part of a sketch is drawn against. */
export interface SketchFrame {
  readonly path: LinePath
  /** The drawn part of the line, from < to, m along. */
  readonly fromM: number
  readonly toM: number
  /** Largest side of what is drawn, > 0, m. */
  readonly extentM: number
  /** Half the width of the likelihood band where it is widest, and of the ground along the line, m. */
  readonly bandHalfM: number
  readonly groundHalfM: number
}

/** Shares of the extent. Chosen: at the width of a phone the band is a thumb's width where it is widest. */
const BAND_SHARE = 0.042
const GROUND_SHARE = 0.1

/** Half a metre to each side of a line whose length nobody knows and that has one point only. */
const LONE_M = 0.5

/**
 * @param alongsM Of the points, m; needed when the length was not told.
 * @returns `null` when there is neither a length nor a point: nothing is there to be drawn.
 */
export function sketchFrame(line: Line, alongsM: readonly number[]): SketchFrame | null {
  const range = lineRange(line, alongsM.filter(Number.isFinite))
  if (range === null || !Number.isFinite(range.toM - range.fromM)) return null
  const isLong = range.toM - range.fromM > 1e-6
  const fromM = isLong ? range.fromM : range.fromM - LONE_M
  const toM = isLong ? range.toM : range.toM + LONE_M
  const path = linePath(line)
  const places = cornersBetween(path, fromM, toM).map((alongM) => placeAlong(path, alongM))
  const xs = places.map(({ xM }) => xM)
  const ys = places.map(({ yM }) => yM)
  const extentM = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys), (toM - fromM) / 4)
  return { path, fromM, toM, extentM, bandHalfM: BAND_SHARE * extentM, groundHalfM: GROUND_SHARE * extentM }
}

/** Both ends of a part of the line and every corner between them, rising, m along. */
export function cornersBetween(path: LinePath, fromM: number, toM: number): number[] {
  return [fromM, ...[...path.alongM.subarray(1, -1)].filter((alongM) => alongM > fromM && alongM < toM), toM]
}
