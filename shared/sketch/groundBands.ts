import type { Cover, Stretch } from '../line/line'
import { directionAlong, placeAlong } from '../line/placeAlong'
import type { DrawCommand } from './drawList'
import { pegSide } from './pegSide'
import { ribbon } from './ribbon'
import { piecesBetween, type SketchFrame } from './sketchFrame'

const GROUND_WORDS: Readonly<Record<Cover, string>> = {
  grass: 'sketch_ground_grass',
  soil: 'sketch_ground_soil',
  gravel: 'sketch_ground_gravel',
  pavers: 'sketch_ground_pavers',
  slab: 'sketch_ground_slab',
  other: 'sketch_ground_other',
}

const NAME_WORDS: Readonly<Record<Cover, string>> = {
  grass: 'label_sketch_grass',
  soil: 'label_sketch_soil',
  gravel: 'label_sketch_gravel',
  pavers: 'label_sketch_pavers',
  slab: 'label_sketch_slab',
  other: 'label_sketch_other',
}

/** What lies over the line: quiet ground along each stretch, with its name at its middle. Measured: it was told. */
export function groundBands(frame: SketchFrame, stretches: readonly Stretch[]): DrawCommand[] {
  return stretches.flatMap((stretch, i) => {
    const fromM = Math.max(stretch.fromM, frame.fromM)
    const toM = Math.min(stretch.toM, frame.toM)
    if (!(toM - fromM > 1e-6)) return []
    const alongM = piecesBetween(frame.path, fromM, toM)
    const values = { from_m: stretch.fromM, to_m: stretch.toM }
    const middleM = (fromM + toM) / 2
    const { x, y } = directionAlong(frame.path, middleM)
    const side = -pegSide(frame.path, middleM)
    return [
      {
        kind: 'polygon',
        id: `ground-${i}`,
        label: { key: GROUND_WORDS[stretch.cover], values },
        certainty: 'measured',
        places: ribbon(
          frame.path,
          alongM,
          alongM.map(() => frame.groundHalfM),
        ),
        ink: stretch.cover,
        strength: 1,
        hatch: 'none',
      },
      {
        kind: 'text',
        id: `ground-name-${i}`,
        label: null,
        certainty: 'measured',
        at: placeAlong(frame.path, middleM, side * frame.groundHalfM),
        offsetPx: [-14 * y * side, 14 * x * side],
        text: { key: NAME_WORDS[stretch.cover], values: {} },
        size: 'small',
        anchor: 'middle',
      },
    ] satisfies DrawCommand[]
  })
}
