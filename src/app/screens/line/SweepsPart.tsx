import type { JobLine, JobSweep } from '../../../../shared/job/job'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { Panel } from '../../look/widgets/Panel'
import { OpenButtons } from '../../open/OpenButtons'
import { removeSweep } from '../../store/actions/removeSweep'

export interface SweepsPartProps {
  readonly jobLine: JobLine
  readonly disabled: boolean
}

/** The sweeps along this line, and more of them. */
export function SweepsPart({ jobLine, disabled }: SweepsPartProps) {
  const { say } = useSay()
  const { store } = useApp()
  return (
    <Panel heading={say('heading_sweeps')}>
      {jobLine.sweeps.length === 0 ? (
        <p>{say('sweeps_none')}</p>
      ) : (
        <>
          {jobLine.sweeps.length > 1 && <p className="soft">{say('sweeps_intro')}</p>}
          <ul className="stack-small">
            {jobLine.sweeps.map((sweep) => (
              <li key={sweep.id} className="line-item-head">
                <SweepWords sweep={sweep} />
                <Button
                  kind="bare"
                  iconOnly
                  icon={<Icon name="remove" />}
                  disabled={disabled}
                  onClick={() => store.dispatch(removeSweep, { lineId: jobLine.id, sweepId: sweep.id })}
                >
                  {say('do_remove_sweep_named', { name: sweep.name })}
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
      <OpenButtons target={{ kind: 'sweep', lineId: jobLine.id }} />
    </Panel>
  )
}

function SweepWords({ sweep: { name, clips } }: { readonly sweep: JobSweep }) {
  const { say } = useSay()
  const points = clips.map(({ row }) => row.point)
  if (points.length === 0) return <span>{say('label_sweep_empty', { name })}</span>
  const first = points.reduce((low, point) => Math.min(low, point))
  const last = points.reduce((high, point) => Math.max(high, point))
  return <span>{say('label_sweep_line', { name, clips: clips.length, first, last })}</span>
}
