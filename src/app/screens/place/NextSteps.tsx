import { nextSteps } from '../../../../shared/answer/nextSteps'
import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'

export interface NextStepsProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}

/** Where to listen next, and what to try where nothing was heard. Where to open has a part of its own. */
export function NextSteps({ line, answer }: NextStepsProps) {
  const { say, sayKeyed, units } = useSay()
  const { listen, tries } = nextSteps(answer, line.line, units)
  const steps = [...(listen.length === 0 ? [] : [listen]), ...tries.map((each) => [each])].map((step) =>
    step.map(sayKeyed).join(' '),
  )
  if (steps.length === 0) return null
  return (
    <Panel heading={say('heading_next')}>
      <ul className="stack-small">
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ul>
    </Panel>
  )
}
