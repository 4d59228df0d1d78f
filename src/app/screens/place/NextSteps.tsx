import type { LocateAnswer } from '../../../../shared/locate/answer'
import { useSay } from '../../frame/useSay'
import { Panel } from '../../look/widgets/Panel'

/** Where to listen next, where to dig first, and what to mind before. */
export function NextSteps({ answer }: { readonly answer: LocateAnswer }) {
  const { say } = useSay()
  const [dig] = answer.digFirst
  const [listen] = answer.listenNext
  if (dig === undefined && listen === undefined) return null
  return (
    <Panel heading={say('heading_next')}>
      <ul className="stack-small">
        {listen && <li>{<Listen place={listen} />}</li>}
        {dig && <li>{<Dig piece={dig} />}</li>}
      </ul>
      {dig && <BeforeDigging />}
    </Panel>
  )
}

function Listen({ place }: { readonly place: LocateAnswer['listenNext'][number] }) {
  const { say } = useSay()
  const values = { along_m: place.alongM, expected_window_m: place.expectedWindowM }
  if (place.offsetM === 0) return say('answer_listen_next', values)
  const beside = { ...values, offset_m: Math.abs(place.offsetM) }
  return place.offsetM > 0 ? say('answer_listen_next_left', beside) : say('answer_listen_next_right', beside)
}

function Dig({ piece }: { readonly piece: LocateAnswer['digFirst'][number] }) {
  const { say } = useSay()
  const values = { from_m: piece.fromM, to_m: piece.toM, probability: piece.probability }
  return piece.cost === null
    ? say('answer_dig_first', values)
    : say('answer_dig_first_cost', { ...values, cost: piece.cost })
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
      </ul>
    </>
  )
}
