import { jobTimes } from '../../../../shared/job/jobTimes'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import type { MendPartProps } from './mendPart'

interface TimesPartProps extends MendPartProps {
  readonly readOnly: boolean
}

/** When what happened; nobody has to write it down. */
export function TimesPart({ line, mend, readOnly, onChange }: TimesPartProps) {
  const { say } = useSay()
  const { nowS } = useApp()
  const createdS = useAppState((state) => state.job?.createdS ?? 0)
  const times = jobTimes(createdS, line)
  const text = (timeS: number | null) =>
    timeS === null ? say('label_time_none') : new Date(timeS * 1000).toLocaleString([], SHOWN)
  return (
    <Panel heading={say('heading_times')}>
      <dl className="mend-times">
        <dt>{say('label_time_arrived')}</dt>
        <dd>{text(times.arrivedS)}</dd>
        <dt>{say('label_time_found')}</dt>
        <dd>{text(times.foundS)}</dd>
        <dt>{say('label_time_mended')}</dt>
        <dd>{text(times.mendedS)}</dd>
        <dt>{say('label_time_closed')}</dt>
        <dd>{text(times.closedS)}</dd>
      </dl>
      {mend.closedS === null ? (
        <Button kind="decision" disabled={readOnly} onClick={() => onChange({ closedS: nowS() })}>
          {say('do_close_job')}
        </Button>
      ) : (
        <Button disabled={readOnly} onClick={() => onChange({ closedS: null })}>
          {say('do_open_job_again')}
        </Button>
      )}
    </Panel>
  )
}

const SHOWN = { dateStyle: 'medium', timeStyle: 'short' } as const
