import type { SketchBox } from '../../../shared/sketch/arrangeSketch'
import { scaleBarM } from '../../../shared/sketch/scaleBarM'
import { formatQuantity } from '../../../shared/words/formatQuantity'
import type { ShownUnits } from '../../../shared/words/shownUnits'
import { STRIP_PX, type ViewSize } from './sketchView'
import { textWidthPx } from './textWidthPx'

const LEFT_PX = 14
const ABOVE_EDGE_PX = 10
/** Between the bar and its words. */
const GAP_PX = 8

export interface ScaleBarAt {
  readonly fromX: number
  readonly toX: number
  readonly wordsX: number
  readonly y: number
  readonly words: string
  /** What it takes up, so that no peg stands on it. */
  readonly box: SketchBox
}

/** A round length at the foot of a picture. */
export function scaleBarAt(pxPerM: number, size: ViewSize, units: ShownUnits): ScaleBarAt {
  const lengthM = scaleBarM(Math.min(120, size.widthPx / 3) / pxPerM, units.length)
  const words = units.length === 'ft' ? formatQuantity('m', lengthM, units) : `${Number(lengthM.toPrecision(6))} m`
  const toX = LEFT_PX + lengthM * pxPerM
  const wordsX = toX + GAP_PX
  const y = size.heightPx + STRIP_PX - ABOVE_EDGE_PX
  const endX = wordsX + textWidthPx(words, 'small')
  const box = { x: (LEFT_PX + endX) / 2, y, halfX: (endX - LEFT_PX) / 2, halfY: 10 }
  return { fromX: LEFT_PX, toX, wordsX, y, words, box }
}
