import type { NumberedLayout } from './rowsFromNames'

/** Points that lie in the order of their numbers, the same distance from each to the next. */
export interface EvenLayout extends NumberedLayout {
  /** The lowest and the highest number; the lowest lies at `startM`. */
  readonly firstPoint: number
  readonly lastPoint: number
}

/** Closer than this to its even place a point lies there, m. Chosen: no tape tells it, and rounding stays far below. */
const SAME_M = 1e-6

/**
 * How points lie that were placed by a spacing, so that a wrong spacing can be mended after opening.
 *
 * @param points Clips or points in any order, several of one point allowed.
 * @returns `null` for points that are not evenly spaced by their numbers, and for fewer than two.
 * @example evenLayout([{ point: 6, alongM: 5 }, { point: 8, alongM: 7 }])
 *   // { startM: 5, spacingM: 1, firstPoint: 6, lastPoint: 8 }
 */
export function evenLayout(points: readonly { readonly point: number; readonly alongM: number }[]): EvenLayout | null {
  const [any] = points
  if (any === undefined) return null
  const first = points.reduce((low, each) => (each.point < low.point ? each : low), any)
  const last = points.reduce((high, each) => (each.point > high.point ? each : high), any)
  const spacingM = (last.alongM - first.alongM) / (last.point - first.point)
  if (!(spacingM > 0 && spacingM < Number.POSITIVE_INFINITY)) return null
  const layout = { startM: first.alongM, spacingM, firstPoint: first.point, lastPoint: last.point }
  const isEven = points.every(({ point, alongM }) => Math.abs(evenAlongM(layout, point) - alongM) <= SAME_M)
  return isEven ? layout : null
}

/** Where a point lies in it, m along. */
export function evenAlongM({ startM, spacingM, firstPoint }: Omit<EvenLayout, 'lastPoint'>, point: number): number {
  return startM + (point - firstPoint) * spacingM
}
