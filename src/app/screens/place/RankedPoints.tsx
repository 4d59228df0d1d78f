import { useState } from 'react'
import type { LocateAnswer, PointAnswer } from '../../../../shared/locate/answer'
import { useIsWide } from '../../frame/useIsWide'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { Peg } from '../../look/widgets/Peg'
import { PointSaid } from './PointSaid'
import { pegState } from './pegState'
import { RankedTable } from './RankedTable'
import './RankedPoints.css'

export interface RankedPointsProps {
  readonly answer: LocateAnswer
  readonly chosenPoint: number | null
  readonly onChoose: (point: number | null) => void
}

/** Points in view before the rest is asked for. */
const FIRST_POINTS = 4

/** The points, the likeliest first, each with what speaks for it: a table on a desk, a list in the hand. */
export function RankedPoints({ answer, chosenPoint, onChoose }: RankedPointsProps) {
  const { say } = useSay()
  const [showsAll, setShowsAll] = useState(false)
  const isWide = useIsWide('table')
  const isLeakHeard = answer.verdict !== 'no leak heard'
  const ranked = [...answer.points].sort((a, b) => a.rank - b.rank)
  const heading = say(isLeakHeard ? 'heading_points' : 'heading_points_if')
  if (isWide) {
    return (
      <Panel heading={heading}>
        <RankedTable isLeakHeard={isLeakHeard} ranked={ranked} chosenPoint={chosenPoint} onChoose={onChoose} />
      </Panel>
    )
  }
  const shown = showsAll ? ranked : ranked.slice(0, FIRST_POINTS)
  return (
    <Panel heading={heading}>
      <ol className="ranked">
        {shown.map((point) => (
          <RankedPoint
            key={point.point}
            point={point}
            isLeakHeard={isLeakHeard}
            isChosen={point.point === chosenPoint}
            onChoose={() => onChoose(point.point === chosenPoint ? null : point.point)}
          />
        ))}
      </ol>
      {ranked.length > shown.length && (
        <Button onClick={() => setShowsAll(true)}>{say('label_all_points', { count: ranked.length })}</Button>
      )}
    </Panel>
  )
}

interface RankedPointProps {
  readonly point: PointAnswer
  readonly isLeakHeard: boolean
  readonly isChosen: boolean
  readonly onChoose: () => void
}

function RankedPoint({ point, isLeakHeard, isChosen, onChoose }: RankedPointProps) {
  const { say } = useSay()
  return (
    <li className="ranked-point">
      <button type="button" className="ranked-button" aria-pressed={isChosen} onClick={onChoose}>
        <span className="unseen">{say('label_point', { point: point.point })}, </span>
        <span aria-hidden="true">
          <Peg point={point.point} state={pegState(point, isLeakHeard)} />
        </span>
        <span className="ranked-words">
          <span className="ranked-head">
            <span>{say('label_point_place', { along_m: point.alongM })}</span>
            <span>
              {say(isLeakHeard ? 'label_nearest' : 'label_nearest_if', { probability: point.nearestProbability })}
            </span>
          </span>
          {isLeakHeard && (
            <meter className="ranked-share" aria-hidden="true" min={0} max={1} value={point.nearestProbability} />
          )}
          <PointSaid point={point} />
        </span>
      </button>
    </li>
  )
}
