import type { SketchPlace } from '../../../../shared/line/line'
import type { Spot } from '../../../../shared/sketch/arrangeSketch'
import { type SketchView, toPlace, toSpot, type ViewSize } from '../sketchView'

/** From a finger on a whole park to a thumb on one flagstone. Chosen. */
const PX_PER_M = { low: 0.05, high: 1200 } as const

/** Across an empty sheet, m. Chosen: a yard. */
const EMPTY_M = 12

/** Room for pegs and letters round what is drawn, px. */
const MARGIN_PX = 56

/** The view that shows all these places; of an empty sheet, a yard's breadth. */
export function padFit(places: readonly SketchPlace[], { widthPx, heightPx }: ViewSize): SketchView {
  const emptyPxPerM = Math.max(widthPx, 1) / EMPTY_M
  if (places.length === 0) return { centreXM: 0, centreYM: 0, pxPerM: emptyPxPerM }
  const [xs, ys] = [places.map(({ xM }) => xM), places.map(({ yM }) => yM)]
  const [lowXM, highXM] = [Math.min(...xs), Math.max(...xs)]
  const [lowYM, highYM] = [Math.min(...ys), Math.max(...ys)]
  const across = Math.max(widthPx - 2 * MARGIN_PX, 1) / Math.max(highXM - lowXM, 1e-9)
  const up = Math.max(heightPx - 2 * MARGIN_PX, 1) / Math.max(highYM - lowYM, 1e-9)
  const pxPerM = Math.min(Math.max(Math.min(across, up, 2 * emptyPxPerM), PX_PER_M.low), PX_PER_M.high)
  return { centreXM: (lowXM + highXM) / 2, centreYM: (lowYM + highYM) / 2, pxPerM }
}

/** Larger or smaller about a spot that stays where it is. */
export function padZoomed(view: SketchView, size: ViewSize, factor: number, about: Spot): SketchView {
  const pxPerM = Math.min(Math.max(view.pxPerM * factor, PX_PER_M.low), PX_PER_M.high)
  const place = toPlace(view, size, about)
  const spot = toSpot({ ...view, pxPerM }, size, place)
  return padPanned({ ...view, pxPerM }, { x: about.x - spot.x, y: about.y - spot.y })
}

/** Moved by pixels. A sheet has no edge. */
export function padPanned(view: SketchView, by: Spot): SketchView {
  return { ...view, centreXM: view.centreXM - by.x / view.pxPerM, centreYM: view.centreYM + by.y / view.pxPerM }
}

/** True when a place is on the sheet, and not under a thumb at its edge. */
export function isOnPad(view: SketchView, size: ViewSize, place: SketchPlace): boolean {
  const { x, y } = toSpot(view, size, place)
  return x >= 0 && y >= 0 && x <= size.widthPx && y <= size.heightPx
}
