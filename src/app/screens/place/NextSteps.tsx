import { nextSteps } from '../../../../shared/answer/nextSteps'
import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { CautionsPart } from '../../frame/CautionsPart'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'

export interface NextStepsProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}

/** Where to listen next, where to dig first, what to mind before, and what to try where nothing was heard. Nobody is sent digging by an unsure answer. */
export function NextSteps({ line, answer }: NextStepsProps) {
  const { say, sayKeyed, units } = useSay()
  const { listen, dig, tries } = nextSteps(answer, line.line, units)
  const steps = [...(listen.length === 0 ? [] : [listen]), ...dig, ...tries.map((each) => [each])].map((step) =>
    step.map(sayKeyed).join(' '),
  )
  if (steps.length === 0) return null
  return (
    <>
      <Panel heading={say('heading_next')}>
        <ul className="stack-small">
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ul>
      </Panel>
      {dig.length > 0 && <CautionsPart step="dig" />}
    </>
  )
}
