import type { DigDimension } from '../job/digDimensions'
import type { Sign } from '../job/signs'
import type { Site } from '../job/site'
import type { Line } from '../line/line'
import { directionAlong, placeAlong } from '../line/placeAlong'
import type { LocateAnswer } from '../locate/answer'
import { type DrawnMark, digMarks } from './digMarks'
import type { DrawCommand } from './drawList'
import { groundBands } from './groundBands'
import { bandWords, likelihoodBand } from './likelihoodBand'
import { lineMarks, pipeStrokes } from './lineMarks'
import { pegs } from './pegs'
import { signMarks } from './signMarks'
import { type SketchFrame, sketchFrame } from './sketchFrame'
import type { SketchPoint } from './sketchPoint'
import { sourceMarks, tapeMark, windowMarks } from './sourceMarks'

export interface SketchOf {
  readonly line: Line
  /** In order along the line, as `sketchPoints` gives them. */
  readonly points: readonly SketchPoint[]
  /** `null` while there is none: then the line alone is drawn. */
  readonly answer: LocateAnswer | null
  readonly chosenPoint: number | null
  /** That a person has said yes to just this answer. */
  readonly isConfirmed: boolean
  /** Pinned beside the line; none unless told. */
  readonly signs?: readonly Sign[]
  /** What the ends are called. */
  readonly ends?: Pick<Site, 'startName' | 'endName'>
  /** Fixed marks from which the place to dig is taped, and the tapes; none unless told. */
  readonly digging?: { readonly marks: readonly DrawnMark[]; readonly dimensions: readonly DigDimension[] }
  /** Scale of the painter, > 0; Infinity draws without breadth, for what is to scale only. */
  readonly pxPerM: number
}

/**
 * A line from above, to scale, with its points and the answer, as drawing commands in the order of painting.
 *
 * @returns Nothing for a line without a length and without points. All numbers are finite.
 */
export function lineSketch(of: SketchOf): DrawCommand[] {
  const { line, points: told, answer, chosenPoint, isConfirmed, pxPerM, signs = [], ends, digging } = of
  const points = told.filter(({ alongM, offsetM }) => Number.isFinite(alongM) && Number.isFinite(offsetM))
  const frame = sketchFrame(
    line,
    points.map(({ alongM }) => alongM),
    pxPerM,
  )
  if (frame === null) return []
  const sources = (answer?.sources ?? []).filter(({ alongM }) => Number.isFinite(alongM))
  return [
    ...groundBands(frame, line.stretches),
    ...windowMarks(frame, sources),
    ...(answer === null ? [] : bandCommands(frame, answer, points)),
    ...pipeStrokes(frame, line),
    ...lineMarks(frame, line, ends),
    ...signMarks(frame, signs),
    ...(answer === null ? [] : listenMark(frame, answer)),
    ...pegs(frame, points, answer, chosenPoint),
    ...(answer === null ? [] : sourceMarks(frame, sources, answer.verdict, isConfirmed)),
    ...tapeMark(frame, sources[0], points),
    ...(digging === undefined ? [] : digMarks(digging.marks, digging.dimensions)),
  ]
}

/** The band, told once: its first piece carries the words. */
function bandCommands(frame: SketchFrame, answer: LocateAnswer, points: readonly SketchPoint[]): DrawCommand[] {
  const band = likelihoodBand(frame, { ...answer, spacingM: medianGapM(points.map(({ alongM }) => alongM)) })
  const label = bandWords(band, answer.verdict)
  return band.map((piece, i) => (i === 0 ? { ...piece, label } : piece))
}

function listenMark({ path }: SketchFrame, { listenNext: [next] }: LocateAnswer): DrawCommand[] {
  if (next === undefined || !Number.isFinite(next.alongM) || !Number.isFinite(next.offsetM)) return []
  const { x, y } = directionAlong(path, next.alongM)
  return [
    {
      kind: 'mark',
      id: 'listen-next',
      label: { key: 'sketch_listen_next', values: { along_m: next.alongM } },
      certainty: 'inferred',
      at: placeAlong(path, next.alongM, next.offsetM),
      shape: 'listen',
      turnRad: Math.atan2(y, x),
    },
    {
      kind: 'text',
      id: 'listen-name',
      label: null,
      certainty: 'inferred',
      at: placeAlong(path, next.alongM, next.offsetM),
      offsetPx: [-y * 28, x * 28],
      text: { key: 'label_sketch_listen', values: {} },
      size: 'small',
      anchor: 'middle',
    },
  ]
}

/** Median distance between neighbours in different places, m; `null` without two. */
function medianGapM(alongM: readonly number[]): number | null {
  const sorted = [...alongM].sort((a, b) => a - b)
  const gaps = sorted.slice(1).map((along, i) => along - sorted[i]!)
  const real = gaps.filter((gap) => gap > 0.01).sort((a, b) => a - b)
  return real[Math.floor((real.length - 1) / 2)] ?? null
}
