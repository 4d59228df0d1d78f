import type { DigPlan } from '../../../../../shared/job/digPlan'
import type { JobLine } from '../../../../../shared/job/job'
import type { Stretch } from '../../../../../shared/line/line'
import { CHOICE_WORDS } from '../../../../../shared/report/choiceWords'
import { useApp } from '../../../frame/useApp'
import { useSay } from '../../../frame/useSay'
import { NumberField } from '../../../look/widgets/NumberField'
import { changeStretches } from '../../../store/actions/changeStretches'

interface CostFieldsProps {
  readonly line: JobLine
  readonly plan: DigPlan
  readonly disabled: boolean
}

/** Cost and time a metre of every stretch the window lies under; they are the line's own. */
export function CostFields({ line, plan, disabled }: CostFieldsProps) {
  const { say } = useSay()
  const { store } = useApp()
  const { stretches } = line.line
  const touched = [...new Set(plan.pieces.map(({ stretch }) => stretch))]
  const put = (i: number, changed: Stretch) =>
    store.dispatch(changeStretches, { lineId: line.id, stretches: stretches.with(i, changed) })
  const field = { unit: '', optional: true, least: 0, disabled, onDone: store.closeStep }
  return (
    <>
      {touched.flatMap((i) => {
        const told = i === null ? undefined : stretches[i]
        if (told === undefined || i === null) return []
        const { digMinPerM, ...others } = told
        const cover = say(CHOICE_WORDS.cover[told.cover])
        return [
          <div key={i} className="open-pair">
            <NumberField
              {...field}
              label={say('label_cost_per_m', { cover })}
              value={told.digCostPerM}
              most={1e9}
              onChange={(digCostPerM) => put(i, { ...told, digCostPerM })}
            />
            <NumberField
              {...field}
              label={say('label_min_per_m', { cover })}
              value={digMinPerM ?? null}
              most={100_000}
              onChange={(minutes) => put(i, { ...others, ...(minutes !== null && { digMinPerM: minutes }) })}
            />
          </div>,
        ]
      })}
      <p className="soft">{say(touched.includes(null) ? 'open_cover_untold' : 'open_costs_how')}</p>
    </>
  )
}
