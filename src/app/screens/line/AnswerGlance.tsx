import type { JobLine } from '../../../../shared/job/job'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Icon } from '../../look/widgets/Icon'
import { routeHash } from '../../route'
import './AnswerGlance.css'

/** The place as it is now, beside the form: what a change does to it is seen at once. */
export function AnswerGlance({ jobLine }: { readonly jobLine: JobLine }) {
  const { say, sayKeyed } = useSay()
  const jobId = useAppState((state) => state.job?.id ?? null)
  const kept = useAppState((state) => state.session.answers[jobLine.id])
  const isWorking = useAppState((state) => state.session.working?.lineId === jobLine.id)
  if (kept === undefined || jobId === null) return null
  const [best] = kept.answer.sources
  const isOld = kept.line !== jobLine.line || kept.sweeps !== jobLine.sweeps
  return (
    <a className="glance" href={routeHash({ screen: 'place', jobId, lineId: jobLine.id })}>
      <span className="glance-words" role="status" data-old={isOld || isWorking}>
        <span className="glance-figure">
          {best === undefined ? say('label_verdict_none') : say('label_length', { m: best.alongM })}
        </span>{' '}
        {best && (
          <span>
            {say(kept.answer.verdict === 'located' ? 'label_verdict_located' : 'label_verdict_unsure')},{' '}
            {sayKeyed(best.tape)}
          </span>
        )}
      </span>
      <span className="unseen">{say('do_show_place')}</span>
      <Icon name="next" />
    </a>
  )
}
