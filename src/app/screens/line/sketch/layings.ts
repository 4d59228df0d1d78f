import type { JobLine } from '../../../../../shared/job/job'
import { MOST_PLANNED_POINTS, type PlannedPoint } from '../../../../../shared/job/plannedPoints'
import { laidPoints } from '../../../../../shared/sketch/laidPoints'
import { pointsOnLine } from '../../../../../shared/sketch/pointsOnLine'

/** Points over the whole line; those that were heard stay. `null` without a line, or for more than a line can have. */
export function layAll(jobLine: JobLine, spacingM: number): PlannedPoint[] | null {
  const { lengthM } = jobLine.line
  if (lengthM === null || lengthM / spacingM > MOST_PLANNED_POINTS) return null
  const staying = pointsOnLine(jobLine).filter(({ clipCount }) => clipCount > 0)
  const heard = new Set(staying.map(({ point }) => point))
  const kept = (jobLine.plannedPoints ?? []).filter(({ point }) => heard.has(point))
  return [...kept, ...laidPoints({ fromM: 0, toM: lengthM, spacingM, staying })]
}

/** More points in and round a window, a spacing past it on either side; all that there are stay. */
export function layClose(
  jobLine: JobLine,
  [fromM, toM]: readonly [number, number],
  spacingM: number,
): PlannedPoint[] | null {
  if ((toM - fromM) / spacingM > MOST_PLANNED_POINTS / 2) return null
  const staying = pointsOnLine(jobLine)
  const laid = laidPoints({ fromM: fromM - spacingM, toM: toM + spacingM, spacingM, staying })
  return [...(jobLine.plannedPoints ?? []), ...laid]
}
