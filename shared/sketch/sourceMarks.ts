import { directionAlong, placeAlong } from '../line/placeAlong'
import type { Reason, Source, Verdict } from '../locate/answer'
import type { DrawCommand } from './drawList'
import { pegSide } from './pegSide'
import { ribbon } from './ribbon'
import { cornersBetween, piecesBetween, type SketchFrame } from './sketchFrame'
import type { SketchPoint } from './sketchPoint'

/** The hatched window of a source, with both its ends in figures. */
export function windowMarks(frame: SketchFrame, sources: readonly Source[]): DrawCommand[] {
  return sources.flatMap((source, i) => {
    const [fromM, toM] = source.windowM
    if (!(toM - fromM > 0)) return []
    const alongM = piecesBetween(frame.path, fromM, toM)
    const places = ribbon(
      frame.path,
      alongM,
      alongM.map(() => frame.windowHalfM),
    )
    const values = { from_m: fromM, to_m: toM, probability: source.windowProbability }
    const end = (id: string, left: number, right: number): DrawCommand => ({
      kind: 'polyline',
      id: `window-${i}-${id}`,
      label: null,
      certainty: 'inferred',
      places: [places[left]!, places[right]!],
      widthPx: 2,
      ink: 'window',
      stroke: 'solid',
    })
    return [
      {
        kind: 'polygon',
        id: `window-${i}`,
        label: { key: i === 0 ? 'sketch_window' : 'sketch_window_other', values },
        certainty: 'inferred',
        places,
        ink: 'window',
        strength: 1,
        hatch: 'lines',
      },
      end('from', 0, places.length - 1),
      end('to', alongM.length - 1, alongM.length),
    ]
  })
}

/** Where each source is thought to be: what waits for a person until somebody has confirmed it. */
export function sourceMarks(
  frame: SketchFrame,
  sources: readonly Source[],
  verdict: Verdict,
  isConfirmed: boolean,
): DrawCommand[] {
  return sources.map((source, i) => {
    const { x, y } = directionAlong(frame.path, source.alongM)
    return {
      kind: 'mark',
      id: `source-${i}`,
      label: { key: sourceKey(i, verdict), values: { along_m: source.alongM, probability: source.probability } },
      certainty: isConfirmed ? 'measured' : 'inferred',
      at: placeAlong(frame.path, source.alongM),
      shape: 'source',
      turnRad: Math.atan2(y, x),
    }
  })
}

function sourceKey(i: number, verdict: Verdict): string {
  if (i > 0) return 'sketch_source_other'
  return verdict === 'located' ? 'sketch_source' : 'sketch_source_unsure'
}

/** A tape shorter than this would be a speck beside the pipe that belongs to nothing, px. */
const LEAST_TAPE_PX = 20

/** The tape lies outside the window, and ends with a bracket toward the pipe. */
const TAPE_SHARE = 1.35

/**
 * The tape from the nearest point to the best source: a line beside the pipe, with its length.
 *
 * @returns Nothing when no point is there to measure from, or the tape would be too short to be seen for one; only its
 *   words when the source lies at a point.
 */
export function tapeMark(frame: SketchFrame, best: Source | undefined, points: readonly SketchPoint[]): DrawCommand[] {
  const from = best && points.find(({ point }) => point === best.tape.values.point)
  if (best === undefined || from === undefined) return []
  const apartM = Math.abs(best.alongM - from.alongM)
  const isAtPoint = best.tape.key === 'tape_at_point'
  if (!isAtPoint && apartM * frame.pxPerM < LEAST_TAPE_PX) return []
  const text: Reason = isAtPoint
    ? { key: 'label_sketch_tape_at', values: { point: from.point } }
    : { key: 'label_sketch_tape', values: { distance_m: apartM } }
  const side = -pegSide(frame.path, best.alongM)
  const sideM = side * TAPE_SHARE * frame.windowHalfM
  const middleM = (from.alongM + best.alongM) / 2
  const { x, y } = directionAlong(frame.path, middleM)
  const label: DrawCommand = {
    kind: 'text',
    id: 'tape-text',
    label: null,
    certainty: 'inferred',
    at: placeAlong(frame.path, isAtPoint ? best.alongM : middleM, sideM),
    offsetPx: [-y * side * 18, x * side * 18],
    text,
    size: 'normal',
    anchor: 'middle',
  }
  if (isAtPoint) return [label]
  const [low, high] = [Math.min(from.alongM, best.alongM), Math.max(from.alongM, best.alongM)]
  return [
    {
      kind: 'polyline',
      id: 'tape',
      label: best.tape,
      certainty: 'inferred',
      places: [
        placeAlong(frame.path, low, side * frame.windowHalfM),
        ...cornersBetween(frame.path, low, high).map((alongM) => placeAlong(frame.path, alongM, sideM)),
        placeAlong(frame.path, high, side * frame.windowHalfM),
      ],
      widthPx: 2,
      ink: 'decision',
      stroke: 'solid',
    },
    label,
  ]
}
