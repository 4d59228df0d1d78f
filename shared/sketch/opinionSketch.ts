import type { Site } from '../job/site'
import type { Line } from '../line/line'
import { directionAlong, placeAlong } from '../line/placeAlong'
import type { DrawCommand } from './drawList'
import { groundBands } from './groundBands'
import { likelihoodBand } from './likelihoodBand'
import { lineMarks, pipeStrokes } from './lineMarks'
import { pegSide } from './pegSide'
import { pegs } from './pegs'
import { piecesBetween, type SketchFrame, sketchFrame } from './sketchFrame'
import type { SketchPoint } from './sketchPoint'

/** A place that somebody names, with its window. */
export interface NamedOnSketch {
  /** Short, to be looked up in the list beside the sketch. */
  readonly letter: string
  readonly alongM: number
  readonly windowM: readonly [number, number]
  readonly isMachine: boolean
}

export interface OpinionSketchOf {
  readonly line: Line
  readonly points: readonly SketchPoint[]
  readonly named: readonly NamedOnSketch[]
  /** All of them together; `null`: no band is drawn. */
  readonly pooled: { readonly alongM: readonly number[]; readonly perM: readonly number[] } | null
  readonly chosenPoint: number | null
  readonly ends?: Pick<Site, 'startName' | 'endName'>
  readonly pxPerM: number
}

/** From one window to the next beside it, and the first from the pipe, in half widths of a window. Chosen by eye: nearer than pegs stand. */
const FIRST_LANE = 0.45
const LANE = 0.36

/**
 * A line from above with the places that several name: each one's window as a stroke in a lane of its own beside the pipe,
 * and what they say together as the band on it. A person's window is drawn solid, the machine's, which is worked out, dashed.
 *
 * @returns Nothing for a line without a length and without points.
 */
export function opinionSketch(of: OpinionSketchOf): DrawCommand[] {
  const { line, points, named, pooled, chosenPoint, ends, pxPerM } = of
  const frame = sketchFrame(
    line,
    points.map(({ alongM }) => alongM),
    pxPerM,
  )
  if (frame === null) return []
  const band = pooled === null ? [] : likelihoodBand(frame, { density: pooled, verdict: 'located', spacingM: null })
  return [
    ...groundBands(frame, line.stretches),
    ...band.map((piece, i) => (i === 0 ? { ...piece, label: { key: 'sketch_pooled', values: {} } } : piece)),
    ...pipeStrokes(frame, line),
    ...lineMarks(frame, line, ends),
    ...pegs(frame, points, null, chosenPoint),
    ...named.flatMap((each, i) => lane(frame, each, i)),
  ]
}

function lane(frame: SketchFrame, { letter, alongM, windowM, isMachine }: NamedOnSketch, i: number): DrawCommand[] {
  const [fromM, toM] = windowM
  const side = -pegSide(frame.path, alongM)
  const sideM = side * (FIRST_LANE + LANE * i) * frame.windowHalfM
  const { x, y } = directionAlong(frame.path, alongM)
  const id = `named-${letter}`
  const common = { label: null, certainty: isMachine ? 'inferred' : 'measured' } as const
  const tick = (at: number, halfPx: number, name: string): DrawCommand => ({
    ...common,
    kind: 'polyline',
    id: `${id}-${name}`,
    places: [-1, 1].map((way) => placeAlong(frame.path, at, sideM + (way * halfPx) / frame.pxPerM)),
    widthPx: 2,
    ink: 'decision',
    stroke: 'solid',
  })
  return [
    {
      ...common,
      kind: 'polyline',
      id,
      label: { key: 'sketch_named', values: { letter, along_m: alongM, from_m: fromM, to_m: toM } },
      places: piecesBetween(frame.path, fromM, Math.max(toM, fromM + 1e-3)).map((at) =>
        placeAlong(frame.path, at, sideM),
      ),
      widthPx: 3,
      ink: 'decision',
      stroke: isMachine ? 'dashed' : 'solid',
    },
    tick(fromM, 4, 'from'),
    tick(toM, 4, 'to'),
    tick(alongM, 8, 'at'),
    {
      ...common,
      kind: 'text',
      id: `${id}-letter`,
      at: placeAlong(frame.path, toM, sideM),
      offsetPx: [x * 12, y * 12],
      text: { key: 'label_sketch_ear', values: { letter } },
      size: 'normal',
      anchor: 'middle',
    },
  ]
}
