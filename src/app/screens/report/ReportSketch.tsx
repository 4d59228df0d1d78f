import { useCallback, useMemo } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
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
  const draw = useCallback(
    (pxPerM: number) =>
      lineSketch({
        line: line.line,
        points,
        answer,
        chosenPoint: null,
        isConfirmed,
        pxPerM,
        ...(line.signs && { signs: line.signs }),
        ...(line.site && { ends: line.site }),
      }),
    [line.line, line.signs, line.site, points, answer, isConfirmed],
  )
  return (
    <div className="report-sketch">
      <SketchStill draw={draw} />
    </div>
  )
}
