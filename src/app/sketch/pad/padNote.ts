import type { SketchPlace } from '../../../../shared/line/line'

/** Something written or drawn on the sheet while it is sketched on. */
export type PadNote =
  | {
      readonly kind: 'text'
      readonly id: string
      readonly at: SketchPlace
      /** Unit vector away from what it belongs to, x to the right, y up. */
      readonly away: readonly [number, number]
      readonly words: string
    }
  /** The sign of a right angle: its corner, and unit vectors along both legs. */
  | {
      readonly kind: 'square'
      readonly id: string
      readonly at: SketchPlace
      readonly along: readonly [number, number]
      readonly beside: readonly [number, number]
    }
  | { readonly kind: 'line'; readonly id: string; readonly from: SketchPlace; readonly to: SketchPlace }
  | { readonly kind: 'dot'; readonly id: string; readonly at: SketchPlace }
