import { nextSteps } from '../../../../shared/answer/nextSteps'
import { METRES_PER_FOOT } from '../../../../shared/base/units'
import type { JobLine } from '../../../../shared/job/job'
import type { LocateAnswer } from '../../../../shared/locate/answer'
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
    <Panel heading={say('heading_next')}>
      <ul className="stack-small">
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ul>
      {dig.length > 0 && <BeforeDigging />}
    </Panel>
  )
}

/** From this depth on a trench needs protection: five feet. [CFR1926] in shared/base/sources.ts */
const PROTECTED_FROM_M = { ft: 5 * METRES_PER_FOOT, m: 1.5 } as const

/** What to mind where the work can hurt someone. */
function BeforeDigging() {
  const { say, units } = useSay()
  return (
    <>
      <h3>{say('heading_before_digging')}</h3>
      <ul className="stack-small">
        <li>{say('caution_marks')}</li>
        <li>{say('caution_trench', { deep_m: PROTECTED_FROM_M[units.length] })}</li>
        <li>{say('caution_water_in_hole')}</li>
        <li>{say('caution_concrete')}</li>
        <li>{say('caution_air_zero')}</li>
        <li>{say('caution_headphones')}</li>
        <li>{say('caution_code')}</li>
      </ul>
    </>
  )
}
