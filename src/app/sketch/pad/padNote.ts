import type { SketchPlace } from '../../../../shared/line/line'
import type { SketchBox, Spot } from '../../../../shared/sketch/arrangeSketch'
import { textWidthPx } from '../textWidthPx'

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

const TEXT_AWAY_PX = 20
const TEXT_HALF_PX = 10

/** Where a note's words stand, off what they belong to and on the sheet. */
export function textBox(
  { away, words }: Extract<PadNote, { kind: 'text' }>,
  spot: Spot,
  { widthPx }: { readonly widthPx: number },
): SketchBox {
  const halfX = textWidthPx(words, 'normal') / 2
  const outPx = TEXT_AWAY_PX + Math.abs(away[0]) * Math.max(halfX - 8, 0)
  const x = Math.min(Math.max(spot.x + away[0] * outPx, halfX + 4), Math.max(widthPx - halfX - 4, halfX + 4))
  return { x, y: spot.y - away[1] * outPx, halfX, halfY: TEXT_HALF_PX }
}
