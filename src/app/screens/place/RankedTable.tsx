import type { PointAnswer } from '../../../../shared/locate/answer'
import { formatNumber, formatQuantity } from '../../../../shared/words/formatQuantity'
import { useSay } from '../../frame/useSay'
import { Peg } from '../../look/widgets/Peg'
import { Table } from '../../look/widgets/Table'
import { pegState } from './pegState'

export interface RankedTableProps {
  readonly isLeakHeard: boolean
  /** The likeliest first. */
  readonly ranked: readonly PointAnswer[]
  readonly chosenPoint: number | null
  readonly onChoose: (point: number | null) => void
}

/** The ranked points side by side, where there is room for it. */
export function RankedTable({ isLeakHeard, ranked, chosenPoint, onChoose }: RankedTableProps) {
  const { say, units } = useSay()
  const shown = (name: string, value: number | null) =>
    value === null ? say('label_nothing') : formatQuantity(name, value, units)
  return (
    <Table
      caption={say('label_ranked_table')}
      captionUnseen
      columns={[
        { heading: say('label_column_point') },
        { heading: say('label_column_along'), align: 'number' },
        { heading: say(isLeakHeard ? 'label_column_nearest' : 'label_column_nearest_if'), align: 'number' },
        { heading: say('label_column_over_floor'), align: 'number' },
        { heading: say('label_column_rings'), align: 'number' },
        { heading: say('label_column_pitch'), align: 'number' },
      ]}
      rows={ranked.map((point) => ({
        key: String(point.point),
        cells: [
          <button
            key="point"
            type="button"
            className="ranked-choose"
            aria-pressed={point.point === chosenPoint}
            onClick={() => onChoose(point.point === chosenPoint ? null : point.point)}
          >
            <span className="unseen">{say('label_point', { point: point.point })}</span>
            <span aria-hidden="true">
              <Peg point={point.point} state={pegState(point, isLeakHeard)} />
            </span>
          </button>,
          shown('along_m', point.alongM),
          shown('probability', point.nearestProbability),
          shown('over_floor_db', point.evidence.overFloorDb),
          point.evidence.ringRatePerS === null ? say('label_nothing') : formatNumber(point.evidence.ringRatePerS, 1),
          shown('pitch_hz', point.evidence.medianPitchHz),
        ],
      }))}
    />
  )
}
