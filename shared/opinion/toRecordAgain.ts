import type { JobLine } from '../job/job'
import type { Opinion } from '../job/opinions'

/** A point where somebody would record again, and has not been listened to since. */
export interface ToRecordAgain {
  readonly point: number
  /** Who asks, and why; may be empty. */
  readonly reviewer: string
  readonly note: string
}

/**
 * What opinions ask to be recorded again on a line and was not since: a clip at that point made after the opinion settles it.
 *
 * @returns By point, each point once, the newest opinion's.
 */
export function toRecordAgain(line: JobLine, opinions: readonly Opinion[]): ToRecordAgain[] {
  const asked = new Map<number, ToRecordAgain>()
  const clips = line.sweeps.flatMap((sweep) => sweep.clips)
  for (const { lineId, timeS, reviewer, again } of [...opinions].sort((a, b) => a.timeS - b.timeS)) {
    if (lineId !== line.id) continue
    for (const { point, note } of again) {
      const isDone = clips.some(({ row }) => row.point === point && row.timeS !== null && row.timeS > timeS)
      if (!isDone) asked.set(point, { point, reviewer, note })
    }
  }
  return [...asked.values()].sort((a, b) => a.point - b.point)
}
