import { useSay } from '../../frame/useSay'
import { Notice } from '../../look/widgets/Notice'
import { confirmationOf } from '../../store/selectors/answerOf'
import type { ConfirmPanelProps } from './slots'

/** What has to happen before anybody digs by this answer. */
export function ConfirmPanel({ line, answer }: ConfirmPanelProps) {
  const { say } = useSay()
  if (answer.verdict !== 'located' || confirmationOf(line, answer) !== null) return null
  return (
    <Notice severity="odd">
      <p>{say('answer_not_confirmed')}</p>
    </Notice>
  )
}
