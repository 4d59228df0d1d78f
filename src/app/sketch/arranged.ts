import { type Arranged, arrangeSketch, type SketchBox } from '../../../shared/sketch/arrangeSketch'
import type { DrawCommand } from '../../../shared/sketch/drawList'
import { wordsOf } from '../../../shared/words/sentence'
import type { ShownUnits } from '../../../shared/words/shownUnits'
import { PEG_PX, STEM_PX } from './PegShape'
import { scaleBarAt } from './scaleBarAt'
import { type SketchView, toSpot, type ViewSize } from './sketchView'
import { textWidthPx } from './textWidthPx'

/** Pegs and letters of a sketch in a view, off the scale bar and off each other. */
export function arranged(
  commands: readonly DrawCommand[],
  view: SketchView,
  size: ViewSize,
  units: ShownUnits,
  /** What else stands on the sheet. */
  more: readonly SketchBox[] = [],
): Arranged {
  return arrangeSketch(commands, {
    toSpot: (place) => toSpot(view, size, place),
    textWidthPx: ({ text, size: letters }) => textWidthPx(wordsOf(text, units).text, letters),
    pegPx: PEG_PX,
    stemPx: STEM_PX,
    sheet: size,
    reserved: [scaleBarAt(view.pxPerM, size, units).box, ...more],
  })
}
