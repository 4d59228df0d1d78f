import { isTry } from '../../../../shared/answer/nextSteps'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'

/** Why the answer is what it is, the strongest reason first. */
export function Reasons({ answer }: { readonly answer: LocateAnswer }) {
  const { say, sayKeyed } = useSay()
  return (
    <Panel heading={say('heading_why')}>
      <ul className="stack-small">
        {answer.reasons
          .filter((reason) => !isTry(reason))
          .map((reason) => (
            <li key={JSON.stringify(reason)}>{sayKeyed(reason)}</li>
          ))}
      </ul>
    </Panel>
  )
}
