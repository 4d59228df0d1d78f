import { lineRange } from '../../../../shared/line/lineRange'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import { Peg } from '../../look/widgets/Peg'
import type { PlaceSketchProps } from './slots'
import './PlaceSketch.css'

/** The line with its points in their order along it: the list that stands beside any drawing of it. */
export function PlaceSketch({ line, answer, chosenPoint, onChoose }: PlaceSketchProps) {
  const { say } = useSay()
  const range = lineRange(
    line.line,
    answer.points.map((point) => point.alongM),
  )
  if (range === null) return null
  const points = [...answer.points].sort((a, b) => a.alongM - b.alongM || a.point - b.point)
  return (
    <Panel heading={say('label_line')}>
      <ul className="place-points" aria-label={say('label_points')}>
        {points.map(({ point, rank, evidence, alongM }) => (
          <li key={point}>
            <button
              type="button"
              className="place-point"
              aria-pressed={point === chosenPoint}
              onClick={() => onChoose(point === chosenPoint ? null : point)}
            >
              <span className="unseen">
                {say('label_point', { point })} {say('label_point_place', { along_m: alongM })}
              </span>
              <span aria-hidden="true">
                <Peg point={point} state={evidence.clipsUsed === 0 ? 'silent' : rank === 1 ? 'best' : 'plain'} />
              </span>
            </button>
          </li>
        ))}
      </ul>
    </Panel>
  )
}
