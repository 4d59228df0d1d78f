import { useMemo, useState } from 'react'
import { blindPoints } from '../../../../shared/opinion/blindPoints'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { EarsSketch } from './EarsSketch'
import type { EarsProps } from './earsProps'
import { OpinionForm } from './OpinionForm'
import { PointWalk } from './PointWalk'
import { useReview } from './useReview'

/** The clips point by point, where the points lie, and the opinion. */
export function HearPart({ job, line }: EarsProps) {
  const { say } = useSay()
  const { review, change } = useReview(job.id, line.id)
  const [chosenPoint, choosePoint] = useState<number | null>(null)
  const numbers = useMemo(
    () => line.sweeps.flatMap(({ clips }) => clips.flatMap(({ row, sound }) => (sound === null ? [] : row.point))),
    [line.sweeps],
  )
  const isShuffled = review.seed !== null && !review.laid
  const points = useMemo(
    () => blindPoints(numbers, isShuffled ? review.seed : null),
    [numbers, isShuffled, review.seed],
  )
  const { alongM, fromM, toM, says } = review.draft
  const named = says === 'here' && alongM !== null && fromM !== null && toM !== null
  return (
    <div className="hear">
      <Panel heading={say('heading_hear')}>
        <PointWalk job={job} line={line} points={points} chosenPoint={chosenPoint} onChoose={choosePoint} />
      </Panel>
      <div className="stack">
        {isShuffled ? (
          <Panel heading={say('heading_lay')}>
            <p>{say('blind_lay_how')}</p>
            <Button onClick={() => change((before) => ({ ...before, laid: true }))}>{say('do_lay')}</Button>
          </Panel>
        ) : (
          <Panel heading={say('heading_your_place')}>
            <EarsSketch
              line={line}
              named={named ? [{ letter: say('label_your_ear'), alongM, windowM: [fromM, toM], isMachine: false }] : []}
              pooled={null}
              chosenPoint={chosenPoint}
              onChoose={choosePoint}
            />
            <OpinionForm job={job} line={line} />
          </Panel>
        )}
      </div>
    </div>
  )
}
