import type { JobLine } from '../../../../shared/job/job'
import { jobTimes } from '../../../../shared/job/jobTimes'
import { keepAnswer } from '../../../../shared/job/keepAnswer'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Panel } from '../../look/widgets/Panel'
import { closeJob } from '../../store/actions/closeJob'
import { openJobAgain } from '../../store/actions/openJobAgain'
import { answerOf } from '../../store/selectors/answerOf'
import { soundingsOf } from '../../store/selectors/soundingsOf'
import { VERSION } from '../../version'
import type { MendPartProps } from './mendPart'

interface TimesPartProps extends Pick<MendPartProps, 'line' | 'mend'> {
  readonly readOnly: boolean
}

/** When what happened; nobody has to write it down. */
export function TimesPart({ line, mend, readOnly }: TimesPartProps) {
  const { say } = useSay()
  const { store, nowS } = useApp()
  const shown = useAppState((state) =>
    answerOf(state, line)?.isCurrent ? state.session.answers[line.id]!.answer : null,
  )
  const heard = useAppState((state) => state.session.heard)
  const isWorking = useAppState((state) => state.session.working?.lineId === line.id)
  const close = () => {
    const [timeS, soundings] = [nowS(), soundingsOf(line, heard)]
    const answer = hasClips(line) ? shown : null
    const keptAnswer = answer && keepAnswer(line, answer, { timeS, version: VERSION, soundings })
    store.dispatch(closeJob, { lineId: line.id, closedS: timeS, keptAnswer })
  }
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
        <>
          {isWorking && <p className="soft">{say('close_waits')}</p>}
          <Button kind="decision" disabled={readOnly || isWorking} onClick={close}>
            {say('do_close_job')}
          </Button>
        </>
      ) : (
        <Button disabled={readOnly} onClick={() => store.dispatch(openJobAgain, { lineId: line.id })}>
          {say('do_open_job_again')}
        </Button>
      )}
    </Panel>
  )
}

const hasClips = ({ sweeps }: JobLine) => sweeps.some(({ clips }) => clips.length > 0)

const SHOWN = { dateStyle: 'medium', timeStyle: 'short' } as const
