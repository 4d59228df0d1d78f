import type { SketchPlace } from '../../../shared/line/line'
import type { Spot } from '../../../shared/sketch/arrangeSketch'
import type { DrawCommand } from '../../../shared/sketch/drawList'
import { type SketchBounds, sketchBounds } from '../../../shared/sketch/sketchBounds'

/** Which part of the sketch is in view, and how large. */
export interface SketchView {
  readonly centreXM: number
  readonly centreYM: number
  readonly pxPerM: number
}

export interface ViewSize {
  readonly widthPx: number
  readonly heightPx: number
}

/** A strip at the foot of every picture, for the scale bar, px. */
export const STRIP_PX = 28

/** Room for pegs and letters round what is drawn, px; a narrow picture needs it for pegs in two rows. */
const MARGIN_PX = { across: 40, up: 58, upNarrow: 82 } as const
const NARROW_PX = 480

/** Chosen: a metre of a long line fills a phone, and one centimetre can still be told. */
const MOST_PX_PER_M = 1200

/** Lowest and highest picture, px; between them a line is as high as it is drawn. */
const HEIGHT_PX = { low: 230, high: 460 } as const

function marginUpPx(widthPx: number): number {
  return widthPx < NARROW_PX ? MARGIN_PX.upNarrow : MARGIN_PX.up
}

/** The view that shows all of it. */
export function fitView(
  { lowXM, highXM, lowYM, highYM }: SketchBounds,
  { widthPx, heightPx }: ViewSize,
  upPx = marginUpPx(widthPx),
): SketchView {
  const across = (widthPx - 2 * MARGIN_PX.across) / Math.max(highXM - lowXM, 1e-9)
  const up = (heightPx - 2 * upPx) / Math.max(highYM - lowYM, 1e-9)
  return {
    centreXM: (lowXM + highXM) / 2,
    centreYM: (lowYM + highYM) / 2,
    pxPerM: Math.min(Math.max(Math.min(across, up), 1e-6), MOST_PX_PER_M),
  }
}

/** Chosen: the nearest points at both sides of the picture, and what is between them as large as it goes. */
const CLOSE_MARGIN_PX = 10
const MOST_CLOSE_PX_PER_M = 400

/**
 * The view of the best source, its window and the point it is measured from.
 *
 * @param commands Drawn without breadth.
 * @param points   Those next to the place.
 * @returns `null` when no source is drawn.
 */
export function closeView(
  commands: readonly DrawCommand[],
  points: readonly number[],
  { widthPx, heightPx }: ViewSize,
): SketchView | null {
  const near = ['source-0', 'window-0', ...points.map((point) => `peg-${point}`)]
  const around = sketchBounds(commands.filter(({ id }) => near.includes(id)))
  if (around === null || !commands.some(({ id }) => id === 'source-0')) return null
  const inside = { widthPx: widthPx - 2 * CLOSE_MARGIN_PX, heightPx: heightPx - 2 * CLOSE_MARGIN_PX }
  const fit = fitView(around, inside, MARGIN_PX.up)
  return { ...fit, pxPerM: Math.min(fit.pxPerM, MOST_CLOSE_PX_PER_M) }
}

/** How high the picture of a sketch is at a width. */
export function heightFor({ lowXM, highXM, lowYM, highYM }: SketchBounds, widthPx: number): number {
  const drawnPx = ((highYM - lowYM) / Math.max(highXM - lowXM, 1e-9)) * (widthPx - 2 * MARGIN_PX.across)
  return Math.round(Math.min(Math.max(drawnPx + 2 * marginUpPx(widthPx), HEIGHT_PX.low), HEIGHT_PX.high))
}

export function toSpot(view: SketchView, { widthPx, heightPx }: ViewSize, { xM, yM }: SketchPlace): Spot {
  return {
    x: widthPx / 2 + (xM - view.centreXM) * view.pxPerM,
    y: heightPx / 2 - (yM - view.centreYM) * view.pxPerM,
  }
}

export function toPlace(view: SketchView, { widthPx, heightPx }: ViewSize, { x, y }: Spot): SketchPlace {
  return {
    xM: view.centreXM + (x - widthPx / 2) / view.pxPerM,
    yM: view.centreYM - (y - heightPx / 2) / view.pxPerM,
  }
}

/**
 * Larger or smaller about a spot that stays where it is; never smaller than the fitted view, which it falls back into.
 */
export function zoomed(view: SketchView, fit: SketchView, size: ViewSize, factor: number, about: Spot): SketchView {
  const pxPerM = Math.min(view.pxPerM * factor, Math.max(MOST_PX_PER_M, fit.pxPerM))
  if (pxPerM <= fit.pxPerM) return fit
  const place = toPlace(view, size, about)
  const moved = { ...view, pxPerM }
  const spot = toSpot(moved, size, place)
  return panned(moved, fit, size, { x: about.x - spot.x, y: about.y - spot.y })
}

/** Moved by pixels, and not off the paper. */
export function panned(view: SketchView, fit: SketchView, { widthPx, heightPx }: ViewSize, by: Spot): SketchView {
  const reachX = widthPx / 2 / fit.pxPerM
  const reachY = heightPx / 2 / fit.pxPerM
  return {
    ...view,
    centreXM: clamped(view.centreXM - by.x / view.pxPerM, fit.centreXM, reachX - widthPx / 2 / view.pxPerM),
    centreYM: clamped(view.centreYM + by.y / view.pxPerM, fit.centreYM, reachY - heightPx / 2 / view.pxPerM),
  }
}

function clamped(value: number, middle: number, reach: number): number {
  const most = Math.max(reach, 0)
  return Math.min(Math.max(value, middle - most), middle + most)
}
