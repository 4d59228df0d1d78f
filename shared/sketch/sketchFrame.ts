import type { Line } from '../line/line'
import { type LinePath, linePath } from '../line/linePath'
import { lineRange } from '../line/lineRange'

/** What every part of a sketch is drawn against. */
export interface SketchFrame {
  readonly path: LinePath
  /** The drawn part of the line, from < to, m along. */
  readonly fromM: number
  readonly toM: number
  /** Scale of the painter; Infinity draws without breadth. */
  readonly pxPerM: number
  /** Half the width, m: of the likelihood band where it is widest, of the window, and of the ground along the line. */
  readonly bandHalfM: number
  readonly windowHalfM: number
  readonly groundHalfM: number
}

/**
 * Half widths on the screen. Chosen: along the line everything is to scale; across it a band must be seen on a line of a
 * hundred metres, and must not swell over its neighbours when somebody looks closer.
 */
const HALF_PX = { band: 15, window: 22, ground: 36 } as const

/** Half a metre to each side of a line whose length nobody knows and that has one point only. */
const LONE_M = 0.5

/**
 * @param alongsM Of the points, m; needed when the length was not told.
 * @param pxPerM  Scale of the painter, > 0; Infinity draws without breadth, for what is to scale only.
 * @returns `null` when there is neither a length nor a point: nothing is there to be drawn.
 */
export function sketchFrame(line: Line, alongsM: readonly number[], pxPerM: number): SketchFrame | null {
  const range = lineRange(line, alongsM)
  if (range === null || !Number.isFinite(range.toM - range.fromM)) return null
  const isLong = range.toM - range.fromM > 1e-6
  return {
    path: linePath(line),
    fromM: isLong ? range.fromM : range.fromM - LONE_M,
    toM: isLong ? range.toM : range.toM + LONE_M,
    pxPerM,
    bandHalfM: HALF_PX.band / pxPerM,
    windowHalfM: HALF_PX.window / pxPerM,
    groundHalfM: HALF_PX.ground / pxPerM,
  }
}

/** Pieces that a broad ribbon is laid in. Chosen: inside a bend its side then follows the line that halves the bend. */
const PIECES = 24

/** A part of the line in short pieces, with every corner in it, rising, m along. */
export function piecesBetween(path: LinePath, fromM: number, toM: number): number[] {
  const even = Array.from({ length: PIECES - 1 }, (_, i) => fromM + ((toM - fromM) * (i + 1)) / PIECES)
  return [...new Set([...cornersBetween(path, fromM, toM), ...even])].sort((a, b) => a - b)
}

/** Both ends of a part of the line and every corner between them, rising, m along. */
export function cornersBetween(path: LinePath, fromM: number, toM: number): number[] {
  return [fromM, ...[...path.alongM.subarray(1, -1)].filter((alongM) => alongM > fromM && alongM < toM), toM]
}
