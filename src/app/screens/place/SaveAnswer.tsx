import { answerJson } from '../../../../shared/answer/answerJson'
import { confirmationOf } from '../../../../shared/job/confirmationOf'
import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Icon } from '../../look/widgets/Icon'
import { saveFile } from '../../saveFile'
import { answerOf } from '../../store/selectors/answerOf'
import { VERSION } from '../../version'

export interface SaveAnswerProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}

/** The answer as a file, the same as the command line writes. */
export function SaveAnswer({ line, answer }: SaveAnswerProps) {
  const { say } = useSay()
  const isCurrent = useAppState((state) => answerOf(state, line)?.isCurrent === true)
  const save = () => {
    const confirmed = confirmationOf(line, answer)?.says === 'yes'
    saveFile('answer.json', `${JSON.stringify({ ...answerJson(answer, VERSION), confirmed })}\n`, 'application/json')
  }
  return (
    <Button icon={<Icon name="save" />} disabled={!isCurrent} onClick={save}>
      {say('do_save_answer')}
    </Button>
  )
}
