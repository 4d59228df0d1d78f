import { useMemo } from 'react'
import { linePath } from '../../../../shared/line/linePath'
import { lineSketch } from '../../../../shared/sketch/lineSketch'
import { sketchPoints } from '../../../../shared/sketch/sketchPoint'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import { Sketch } from '../../sketch/Sketch'
import { confirmationOf } from '../../store/selectors/answerOf'
import type { PlaceSketchProps } from './slots'

/** The line from above with the answer on it. */
export function PlaceSketch({ line, answer, chosenPoint, onChoose }: PlaceSketchProps) {
  const { say } = useSay()
  const isConfirmed = confirmationOf(line, answer)?.says === 'yes'
  const rows = useMemo(() => line.sweeps.flatMap(({ clips }) => clips.map(({ row }) => row)), [line.sweeps])
  const path = useMemo(() => linePath(line.line), [line.line])
  const commands = useMemo(
    () => lineSketch({ line: line.line, points: sketchPoints(rows, answer), answer, chosenPoint, isConfirmed }),
    [line.line, rows, answer, chosenPoint, isConfirmed],
  )
  if (commands.length === 0) return null
  return (
    <Panel heading={say('label_line')} headingUnseen>
      <Sketch
        commands={commands}
        path={path}
        chosenPoint={chosenPoint}
        onChoose={(point) => onChoose(point === chosenPoint ? null : point)}
      />
    </Panel>
  )
}
