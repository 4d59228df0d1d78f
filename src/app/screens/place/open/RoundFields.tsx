import type { Digging } from '../../../../../shared/job/digging'
import type { DigPlan } from '../../../../../shared/job/digPlan'
import type { JobLine } from '../../../../../shared/job/job'
import { useApp } from '../../../frame/useApp'
import { useSay } from '../../../frame/useSay'
import { NumberField } from '../../../look/widgets/NumberField'
import { changeDigging } from '../../../store/actions/changeDigging'

interface RoundFieldsProps {
  readonly line: JobLine
  readonly digging: Digging
  readonly plan: DigPlan
  readonly disabled: boolean
}

/** A new pipe round a slab: how long, what a metre costs, and what that would save. */
export function RoundFields({ line, digging, plan: { round }, disabled }: RoundFieldsProps) {
  const { say } = useSay()
  const { store } = useApp()
  const put = (change: Partial<Digging>) => store.dispatch(changeDigging, { lineId: line.id, change })
  const field = { optional: true, least: 0, disabled, onDone: store.closeStep }
  return (
    <div className="stack">
      <p className="soft">{say('round_why')}</p>
      <div className="open-pair">
        <NumberField
          {...field}
          label={say('label_round_m')}
          value={digging.roundM}
          unit="m"
          most={10_000}
          onChange={(roundM) => put({ roundM })}
        />
        <NumberField
          {...field}
          label={say('label_round_cost')}
          value={digging.roundCostPerM}
          unit=""
          most={1e9}
          onChange={(roundCostPerM) => put({ roundCostPerM })}
        />
      </div>
      {round !== null && (
        <p>
          {round.saves > 0
            ? say('round_saves', { round_cost: round.cost, saved_cost: round.saves })
            : say('round_saves_nothing', { round_cost: round.cost, lost_cost: -round.saves })}
        </p>
      )}
    </div>
  )
}
