import type { Found } from '../../../shared/job/found'
import type { JobLine } from '../../../shared/job/job'
import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Disclosure } from '../look/widgets/Disclosure'
import { Icon } from '../look/widgets/Icon'
import { Panel } from '../look/widgets/Panel'
import { removeFound } from '../store/actions/removeFound'
import { FoundForm } from './FoundForm'
import { FoundPhoto } from './FoundPhoto'
import type { FoundPartProps } from './foundProps'
import { foundText, heldText } from './foundTexts'
import { useWindowScore } from './useWindowScore'
import './FoundPart.css'

/** What was found when the ground was opened, or by eye or ear, and how the window did. */
export function FoundPart({ line, answer, place }: FoundPartProps) {
  const { say } = useSay()
  const found = line.found ?? []
  const form = <FoundForm key={found.length} line={line} answer={answer} place={place} />
  return (
    <Panel heading={say('heading_found')}>
      {found.length > 0 && (
        <ul className="found-list">
          {found.map((each) => (
            <FoundOne key={each.id} line={line} found={each} />
          ))}
        </ul>
      )}
      {found.length > 0 && <Score />}
      {found.length === 0 ? form : <Disclosure summary={say('label_found_more')}>{form}</Disclosure>}
    </Panel>
  )
}

function FoundOne({ line, found }: { readonly line: JobLine; readonly found: Found }) {
  const { say } = useSay()
  const { store } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  return (
    <li className="found">
      <p className="found-what">{foundText(say, found)}</p>
      <p>{heldText(say, found)}</p>
      {found.note !== '' && <p>{say('label_noted', { note: found.note })}</p>}
      {found.photo && <FoundPhoto photo={found.photo} />}
      <div className="row">
        <Button
          icon={<Icon name="remove" />}
          disabled={readOnly}
          onClick={() => store.dispatch(removeFound, { lineId: line.id, foundId: found.id })}
        >
          {say('do_remove_found')}
        </Button>
      </div>
    </li>
  )
}

function Score() {
  const { say } = useSay()
  const score = useWindowScore()
  if (score === null || score.windows === 0) return null
  return (
    <p className="soft">
      {say('found_score', { held: score.held, windows: score.windows })}{' '}
      {score.medianErrorM !== null && say('found_score_error', { error_m: score.medianErrorM })}
    </p>
  )
}
