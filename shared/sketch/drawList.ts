import type { SketchPlace } from '../line/line'
import type { Reason } from '../locate/answer'

/**
 * A sketch as a list of plain commands, painted in their order: screen, print and pictures share it.
 *
 * Places are in metres on the line's sketch (x to the right, y up), so that a painter of any size draws to scale. What
 * must not grow with the scale (pegs, letters, widths of strokes) is in pixels of a painter at its natural size.
 */
export type DrawCommand = DrawPolyline | DrawPolygon | DrawText | DrawPeg | DrawMark

/**
 * What a stroke or a surface stands for; the painter knows its colour in light, dark, print and forced colours.
 * `decision` is for what waits for a person; covers have a pattern of their own.
 */
export type Ink =
  | 'pipe'
  | 'faint'
  | 'likelihood'
  | 'window'
  | 'decision'
  | 'grass'
  | 'soil'
  | 'gravel'
  | 'pavers'
  | 'slab'
  | 'other'

interface DrawCommon {
  /** Same thing, same id, from one drawing to the next: `peg-7`, `window-0`. */
  readonly id: string
  /** What it is in words, as an entry of the twin list; `null` for what only decorates. */
  readonly label: Reason | null
  /** What was measured or told is drawn solid, what is inferred hatched or faded. */
  readonly certainty: 'measured' | 'inferred'
}

export interface DrawPolyline extends DrawCommon {
  readonly kind: 'polyline'
  /** Two or more. */
  readonly places: readonly SketchPlace[]
  readonly widthPx: number
  readonly ink: Ink
  readonly stroke: 'solid' | 'dashed'
}

export interface DrawPolygon extends DrawCommon {
  readonly kind: 'polygon'
  /** Three or more; closed by itself. */
  readonly places: readonly SketchPlace[]
  readonly ink: Ink
  /** How dark, 0 to 1: of one ink from pale to full. */
  readonly strength: number
  /** A hatch reads in grey and in the sun where a tint does not. */
  readonly hatch: 'none' | 'lines' | 'cross'
}

export interface DrawText extends DrawCommon {
  readonly kind: 'text'
  readonly at: SketchPlace
  /** From the place, to the right and up, pixels. */
  readonly offsetPx: readonly [number, number]
  readonly text: Reason
  readonly size: 'small' | 'normal'
  readonly anchor: 'start' | 'middle' | 'end'
}

/** A point: a rounded square with its number. */
export interface DrawPeg extends DrawCommon {
  readonly kind: 'peg'
  readonly at: SketchPlace
  readonly point: number
  /** `best`: ranked first. `silent`: none of its clips could be used. */
  readonly state: 'plain' | 'best' | 'silent'
  readonly chosen: boolean
  /**
   * Unit vector from the place to where the square had better stand (x to the right, y up): beside the line, so that it
   * does not hide what swells there.
   */
  readonly side: readonly [number, number]
}

/** Something on or beside the line. */
export interface DrawMark extends DrawCommon {
  readonly kind: 'mark'
  readonly at: SketchPlace
  readonly shape:
    | 'start'
    | 'end'
    | 'elbow'
    | 'tee'
    | 'coupling'
    | 'valve'
    | 'inlet'
    | 'noise'
    | 'source'
    | 'listen'
    | 'sign'
    | 'fixed'
  /** Direction of the line there, radians from x toward y; marks turn with it. */
  readonly turnRad: number
}
