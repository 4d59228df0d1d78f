import { useCallback, useMemo } from 'react'
import { NO_DIGGING } from '../../../../shared/job/digging'
import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { diggingOf } from '../../../../shared/sketch/diggingOf'
import { lineSketch } from '../../../../shared/sketch/lineSketch'
import { sketchPoints } from '../../../../shared/sketch/sketchPoint'
import { SketchStill } from '../../sketch/SketchStill'

interface ReportSketchProps {
  readonly line: JobLine
  readonly answer: LocateAnswer | null
  readonly isConfirmed: boolean
}

/** The line from above with the place; the sentences beside it say the same. */
export function ReportSketch({ line, answer, isConfirmed }: ReportSketchProps) {
  const points = useMemo(
    () =>
      answer === null
        ? []
        : sketchPoints(
            line.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row)),
            answer,
          ),
    [line.sweeps, answer],
  )
  const shown = line.keptAnswer?.answer === answer && line.keptAnswer ? line.keptAnswer.line : line.line
  const digging = useMemo(
    () => diggingOf(shown, answer?.sources[0], line.digging ?? NO_DIGGING),
    [shown, answer, line.digging],
  )
  const draw = useCallback(
    (pxPerM: number) =>
      lineSketch({
        line: shown,
        digging,
        points,
        answer,
        chosenPoint: null,
        isConfirmed,
        pxPerM,
        ...(line.signs && { signs: line.signs }),
        ...(line.site && { ends: line.site }),
      }),
    [shown, digging, line.signs, line.site, points, answer, isConfirmed],
  )
  return (
    <div className="report-sketch">
      <SketchStill draw={draw} />
    </div>
  )
}
