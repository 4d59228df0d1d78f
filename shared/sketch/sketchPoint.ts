import type { LocateAnswer } from '../locate/answer'
import type { SweepRow } from '../sweep/sweep'

/** A point as the sketch shows it. */
export interface SketchPoint {
  readonly point: number
  readonly alongM: number
  /** Off the line, positive to the left looking from start to end, m. */
  readonly offsetM: number
  /** That some clip of it was used; true as long as there is no answer. */
  readonly isHeard: boolean
}

/**
 * The points of a line, each once, in order along it.
 *
 * @param rows   Of every clip; the first row of a point says where it lies.
 * @param answer Says which points could be used; `null` while there is none.
 */
export function sketchPoints(
  rows: readonly Pick<SweepRow, 'point' | 'alongM' | 'offsetM'>[],
  answer: Pick<LocateAnswer, 'points'> | null,
): SketchPoint[] {
  const used = new Map(answer?.points.map(({ point, evidence }) => [point, evidence.clipsUsed > 0]))
  const first = new Map<number, SketchPoint>()
  for (const { point, alongM, offsetM } of rows) {
    if (first.has(point) || !Number.isFinite(alongM) || !Number.isFinite(offsetM)) continue
    first.set(point, { point, alongM, offsetM, isHeard: answer === null || (used.get(point) ?? false) })
  }
  return [...first.values()].sort((a, b) => a.alongM - b.alongM || a.point - b.point)
}
