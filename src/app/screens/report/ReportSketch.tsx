import { useCallback, useMemo } from 'react'
import { NO_DIGGING } from '../../../../shared/job/digging'
import type { JobLine } from '../../../../shared/job/job'
import type { ReportResult } from '../../../../shared/report/reportResult'
import { sketchPicture } from '../../../../shared/report/sketchPicture'
import { diggingOf } from '../../../../shared/sketch/diggingOf'
import { lineSketch } from '../../../../shared/sketch/lineSketch'
import { sketchPoints } from '../../../../shared/sketch/sketchPoint'
import { useSay } from '../../frame/useSay'
import { SketchStill } from '../../sketch/SketchStill'
import { ReportPicture } from './ReportPicture'

interface ReportSketchProps {
  readonly line: JobLine
  readonly result: ReportResult | null
  readonly isConfirmed: boolean
}

/** The line from above with the place; the sentences beside it say the same. */
export function ReportSketch({ line, result, isConfirmed }: ReportSketchProps) {
  const { units } = useSay()
  const answer = result?.answer ?? null
  const picture = useMemo(() => sketchPicture(line, result, isConfirmed, units), [line, result, isConfirmed, units])
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
  const shown = result?.line ?? line.line
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
    <>
      <div className="report-sketch report-sketch-screen">
        <SketchStill draw={draw} />
      </div>
      {picture && <ReportPicture kind="sketch-print" picture={picture} />}
    </>
  )
}
