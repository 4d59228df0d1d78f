import type { DigDimension } from '../job/digDimensions'
import type { SketchPlace } from '../line/line'
import type { DrawCommand } from './drawList'

/** A fixed mark as it is drawn: its name and where it is. */
export interface DrawnMark {
  readonly id: string
  readonly name: string
  readonly place: SketchPlace
}

/** Fixed marks beside the line, and with two of them the tapes to both ends of the window. */
export function digMarks(marks: readonly DrawnMark[], dimensions: readonly DigDimension[]): DrawCommand[] {
  const ends = dimensions.filter(({ what }) => what !== 'place')
  const tapes = ends.flatMap(({ what, place, firstM, secondM }) => [
    ...tapeTo(`${what}-first`, marks[0]!.place, place, firstM),
    ...tapeTo(`${what}-second`, marks[1]!.place, place, secondM),
  ])
  return [...tapes, ...marks.flatMap(fixedMark)]
}

function fixedMark({ id, name, place }: DrawnMark): DrawCommand[] {
  return [
    {
      kind: 'mark',
      id: `fixed-${id}`,
      label: { key: 'sketch_fixed_mark', values: { name } },
      certainty: 'measured',
      at: place,
      shape: 'fixed',
      turnRad: 0,
    },
    {
      kind: 'text',
      id: `fixed-${id}-name`,
      label: null,
      certainty: 'measured',
      at: place,
      offsetPx: [0, 20],
      text: { key: 'label_sketch_named', values: { name } },
      size: 'normal',
      anchor: 'middle',
    },
  ]
}

function tapeTo(id: string, from: SketchPlace, to: SketchPlace, lengthM: number): DrawCommand[] {
  if (!(lengthM > 0)) return []
  // A little off the middle, so that the lengths of tapes to both ends do not stand over each other.
  const share = id.startsWith('begin') ? 0.42 : 0.58
  return [
    {
      kind: 'polyline',
      id: `dimension-${id}`,
      label: null,
      certainty: 'inferred',
      places: [from, to],
      widthPx: 1.5,
      ink: 'faint',
      stroke: 'dashed',
    },
    {
      kind: 'text',
      id: `dimension-${id}-text`,
      label: null,
      certainty: 'inferred',
      at: { xM: from.xM + share * (to.xM - from.xM), yM: from.yM + share * (to.yM - from.yM) },
      offsetPx: [0, 0],
      text: { key: 'label_sketch_tape', values: { distance_m: lengthM } },
      size: 'normal',
      anchor: 'middle',
    },
  ]
}
