import type { JobLine } from '../../../../shared/job/job'
import type { Sign } from '../../../../shared/job/signs'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { type Say, useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'
import { SIGN_WORDS } from '../../sketch/signWords'

export interface SignsPartProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}

/** What was seen or heard in the yard, beside the answer: whether it agrees is for a person to weigh. */
export function SignsPart({ line: { signs = [] }, answer }: SignsPartProps) {
  const { say } = useSay()
  if (signs.length === 0) return null
  const window = answer.sources[0]?.windowM ?? null
  return (
    <Panel heading={say('heading_signs')}>
      <ul className="stack-small">
        {signs.map((sign) => (
          <li key={sign.id}>
            {[whereOf(say, sign, window), besideOf(say, sign), sign.note].filter(Boolean).join(' ')}
          </li>
        ))}
      </ul>
      <p className="soft">{say('signs_apart')}</p>
    </Panel>
  )
}

function whereOf(say: Say, { kind, alongM }: Sign, window: readonly [number, number] | null): string {
  const values = { kind: say(SIGN_WORDS[kind]), at_m: alongM }
  if (window === null) return say('sign_alone', values)
  const [fromM, toM] = window
  if (alongM < fromM) return say('sign_before_window', { ...values, away_m: fromM - alongM })
  if (alongM > toM) return say('sign_past_window', { ...values, away_m: alongM - toM })
  return say('sign_in_window', values)
}

function besideOf(say: Say, { offsetM }: Sign): string {
  if (offsetM === 0) return ''
  return say(offsetM > 0 ? 'sign_left' : 'sign_right', { offset_m: Math.abs(offsetM) })
}
