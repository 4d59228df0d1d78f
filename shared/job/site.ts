import type { SketchPlace } from '../line/line'

export const ROUTE_WAYS = ['traced', 'drawing', 'paced'] as const

/** How somebody knows where the line runs: traced from above, read off a drawing, or paced. */
export type RouteWay = (typeof ROUTE_WAYS)[number]

/** A photo or a drawing of the site that lies under the sketch. Its bytes are kept apart from the job, as clips are. */
export interface SitePhoto {
  /** SHA-256 of the bytes as they came, 64 small hexadecimal digits. */
  readonly sha256: string
  readonly bytes: number
  /** Size as shown, px. */
  readonly widthPx: number
  readonly heightPx: number
  /** Its scale: metres of ground a pixel. */
  readonly mPerPx: number
  /** False until somebody told a distance on it: then the scale is only a guess, and lengths drawn over it are too. */
  readonly scaleTold: boolean
  /** Where its middle lies on the sketch. */
  readonly centre: SketchPlace
  /** How far it is turned about its middle, degrees clockwise above -180 and up to 180; not there: not at all. */
  readonly turnDeg?: number
}

/** What was told of the line's surroundings; the answer is not worked out from any of it. */
export interface Site {
  /** What the line begins and ends at, as "filter room"; empty when not told. */
  readonly startName: string
  readonly endName: string
  /** `null`: not said. */
  readonly routeWay: RouteWay | null
  /** Where the line begins while it has no leg yet; `null` when that was not set, or it has one. */
  readonly startAt: SketchPlace | null
  /** A bend that corners snap to besides the right angle, degrees above 0 and below 180; `null` for none. */
  readonly snapDeg: number | null
  readonly photo: SitePhoto | null
}

/** Nothing told. */
export const BARE_SITE: Site = {
  startName: '',
  endName: '',
  routeWay: null,
  startAt: null,
  snapDeg: null,
  photo: null,
}

export const MOST_END_NAME = 200
