import { useCallback, useMemo } from 'react'
import { confirmationOf } from '../../../../shared/job/confirmationOf'
import { linePath } from '../../../../shared/line/linePath'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { lineSketch } from '../../../../shared/sketch/lineSketch'
import { sketchPoints } from '../../../../shared/sketch/sketchPoint'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import { Sketch } from '../../sketch/Sketch'
import type { PlaceSketchProps } from './slots'

/** The line from above with the answer on it. */
export function PlaceSketch({ line, answer, chosenPoint, onChoose }: PlaceSketchProps) {
  const { say } = useSay()
  const isConfirmed = confirmationOf(line, answer)?.says === 'yes'
  const rows = useMemo(() => line.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row)), [line.sweeps])
  const points = useMemo(() => sketchPoints(rows, answer), [rows, answer])
  const path = useMemo(() => linePath(line.line), [line.line])
  const draw = useCallback(
    (pxPerM: number) =>
      lineSketch({
        line: line.line,
        points,
        answer,
        chosenPoint,
        isConfirmed,
        pxPerM,
        ...(line.signs && { signs: line.signs }),
        ...(line.site && { ends: line.site }),
      }),
    [line.line, line.signs, line.site, points, answer, chosenPoint, isConfirmed],
  )
  if (draw(Number.POSITIVE_INFINITY).length === 0) return null
  return (
    <Panel heading={say('label_line')} headingUnseen>
      <Sketch
        draw={draw}
        closePoints={nextTo(answer)}
        path={path}
        chosenPoint={chosenPoint}
        onChoose={(point) => onChoose(point === chosenPoint ? null : point)}
      />
    </Panel>
  )
}

/** The points that the tape to the best source names. */
function nextTo({ sources: [best] }: LocateAnswer): number[] {
  const { point, toward } = best?.tape.values ?? {}
  return [point, toward].filter((each) => typeof each === 'number')
}
