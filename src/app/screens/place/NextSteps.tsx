import type { JobLine } from '../../../../shared/job/job'
import { linePath } from '../../../../shared/line/linePath'
import { tapeDistance } from '../../../../shared/line/tapeDistance'
import type { LocateAnswer } from '../../../../shared/locate/answer'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'

export interface NextStepsProps {
  readonly line: JobLine
  readonly answer: LocateAnswer
}

/** Where to listen next, where to dig first, and what to mind before. Nobody is sent digging by an unsure answer. */
export function NextSteps({ line, answer }: NextStepsProps) {
  const { say, sayKeyed } = useSay()
  const dig = answer.verdict === 'located' ? answer.digFirst[0] : undefined
  const [listen] = answer.listenNext
  if (dig === undefined && listen === undefined) return null
  const corners = linePath(line.line).alongM.subarray(1, -1)
  const tapeTo: TapeTo = (alongM) => sayKeyed(tapeDistance(alongM, answer.points, corners))
  return (
    <Panel heading={say('heading_next')}>
      <ul className="stack-small">
        {listen && <li>{<Listen place={listen} tapeTo={tapeTo} />}</li>}
        {dig && <li>{<Dig piece={dig} tapeTo={tapeTo} />}</li>}
      </ul>
      {dig && <BeforeDigging />}
    </Panel>
  )
}

/** How to find a place by tape, in words. */
type TapeTo = (alongM: number) => string

interface ListenProps {
  readonly place: LocateAnswer['listenNext'][number]
  readonly tapeTo: TapeTo
}

function Listen({ place: { alongM, offsetM, expectedWindowM }, tapeTo }: ListenProps) {
  const { say } = useSay()
  const values = { along_m: alongM, expected_window_m: expectedWindowM, tape: tapeTo(alongM) }
  if (offsetM === 0) return say('next_listen', values)
  return say(offsetM > 0 ? 'next_listen_left' : 'next_listen_right', { ...values, offset_m: Math.abs(offsetM) })
}

interface DigProps {
  readonly piece: LocateAnswer['digFirst'][number]
  readonly tapeTo: TapeTo
}

function Dig({ piece: { fromM, toM, probability, cost }, tapeTo }: DigProps) {
  const { say } = useSay()
  return (
    <>
      {say('next_dig', { from_m: fromM, to_m: toM, probability })}{' '}
      {say('next_dig_ends', { from: tapeTo(fromM), to: tapeTo(toM) })}
      {cost !== null && <> {say('next_dig_cost', { cost })}</>}
    </>
  )
}

/** What to mind where the work can hurt someone. */
function BeforeDigging() {
  const { say } = useSay()
  return (
    <>
      <h3>{say('heading_before_digging')}</h3>
      <ul className="stack-small">
        <li>{say('caution_marks')}</li>
        <li>{say('caution_trench')}</li>
        <li>{say('caution_water_in_hole')}</li>
        <li>{say('caution_concrete')}</li>
        <li>{say('caution_air_zero')}</li>
        <li>{say('caution_headphones')}</li>
        <li>{say('caution_code')}</li>
      </ul>
    </>
  )
}
