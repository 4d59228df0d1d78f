import type { Sign, SignKind } from '../job/signs'
import { directionAlong, placeAlong } from '../line/placeAlong'
import type { DrawCommand } from './drawList'
import type { SketchFrame } from './sketchFrame'

const NAMES = {
  'wet patch': { name: 'label_sketch_wet_patch', label: 'sketch_sign_wet_patch' },
  'sunk paver': { name: 'label_sketch_sunk_paver', label: 'sketch_sign_sunk_paver' },
  bubbles: { name: 'label_sketch_bubbles', label: 'sketch_sign_bubbles' },
  'bare ear': { name: 'label_sketch_bare_ear', label: 'sketch_sign_bare_ear' },
  other: { name: 'label_sketch_sign', label: 'sketch_sign_other' },
} as const satisfies Record<SignKind, { name: string; label: string }>

/** From the mark to the middle of its name, px. */
const NAME_PX = 20

/** Signs at their places beside the line, each with its name where there is room. */
export function signMarks(frame: SketchFrame, signs: readonly Sign[]): DrawCommand[] {
  return signs.flatMap(({ id, kind, alongM, offsetM }): DrawCommand[] => {
    const at = placeAlong(frame.path, alongM, offsetM)
    if (!Number.isFinite(at.xM) || !Number.isFinite(at.yM)) return []
    const { x, y } = directionAlong(frame.path, alongM)
    const side = offsetM < 0 ? -1 : 1
    const { name, label } = NAMES[kind]
    return [
      {
        kind: 'mark',
        id: `sign-${id}`,
        label: { key: label, values: { along_m: alongM, offset_m: Math.abs(offsetM) } },
        certainty: 'measured',
        at,
        shape: 'sign',
        turnRad: 0,
      },
      {
        kind: 'text',
        id: `sign-${id}-name`,
        label: null,
        certainty: 'measured',
        at,
        offsetPx: [-y * side * NAME_PX, x * side * NAME_PX],
        text: { key: name, values: {} },
        size: 'small',
        anchor: 'middle',
      },
    ]
  })
}
