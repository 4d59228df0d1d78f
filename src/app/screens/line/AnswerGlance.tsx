import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Icon } from '../../look/widgets/Icon'
import { routeHash } from '../../route'
import { TapeFigure } from '../../tape/TapeFigure'
import './AnswerGlance.css'

/** The place as it is now, beside the form: what a change does to it is seen at once. */
export function AnswerGlance({ jobLine }: { readonly jobLine: JobLine }) {
  const { say } = useSay()
  const jobId = useAppState((state) => state.job?.id ?? null)
  const kept = useAppState((state) => state.session.answers[jobLine.id])
  const isWorking = useAppState((state) => state.session.working?.lineId === jobLine.id)
  const hasClips = jobLine.sweeps.some(({ clips }) => clips.length > 0)
  if (kept === undefined || jobId === null || !hasClips) return null
  const isOld = kept.line !== jobLine.line || kept.sweeps !== jobLine.sweeps
  return (
    <a className="glance" href={routeHash({ screen: 'place', jobId, lineId: jobLine.id })}>
      <span className="glance-words" role="status" data-old={isOld || isWorking}>
        <GlanceWords answer={kept.answer} />
      </span>
      <span className="unseen">{say('do_show_place')}</span>
      <Icon name="next" />
    </a>
  )
}

function GlanceWords({ answer: { verdict, sources } }: { readonly answer: LocateAnswer }) {
  const { say, sayKeyed } = useSay()
  const [best] = sources
  if (verdict === 'no leak heard') return <span className="glance-word">{say('label_verdict_none')}</span>
  if (best === undefined) return <span className="glance-word">{say('label_verdict_unsure')}</span>
  if (verdict === 'unsure') {
    return (
      <>
        <span className="glance-word">{say('label_verdict_unsure')}</span>{' '}
        <span>{say('verdict_candidate', { tape: sayKeyed(best.tape) })}</span>
      </>
    )
  }
  return (
    <>
      <span className="glance-word">{say('label_verdict_located')}</span> <TapeFigure tape={best.tape} />
    </>
  )
}
