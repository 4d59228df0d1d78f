import { useState } from 'react'
import { confirmationOf } from '../../../../shared/job/confirmationOf'
import { CONFIRMATIONS, type Confirmation } from '../../../../shared/job/job'
import { CHOICE_WORDS } from '../../../../shared/report/choiceWords'
import { useApp, useAppState } from '../../frame/useApp'
import { type Say, useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Choice } from '../../look/widgets/Choice'
import { Panel } from '../../look/widgets/Panel'
import { TextField } from '../../look/widgets/TextField'
import { newId } from '../../newId'
import { choosePoint } from '../../store/actions/choosePoint'
import { confirmPlace } from '../../store/actions/confirmPlace'
import { type ConfirmNeeds, missingForConfirm } from '../../store/selectors/missingForConfirm'
import { ConfirmStep } from './ConfirmStep'
import { showPointPanel } from './showPointPanel'
import type { ConfirmPanelProps } from './slots'
import './ConfirmPanel.css'

/** What somebody has to look at and listen to before they may say whether they believe the place. */
export function ConfirmPanel({ line, answer }: ConfirmPanelProps) {
  const { say } = useSay()
  const examined = useAppState((state) => state.session.examined[line.id])
  const [asksAgain, setAsksAgain] = useState(false)
  const needs = missingForConfirm(answer, examined)
  const said = confirmationOf(line, answer)
  if (needs === null) return null
  return (
    <Panel heading={say('heading_confirm')}>
      {said !== null && !asksAgain ? (
        <Said said={said} onAgain={() => setAsksAgain(true)} />
      ) : (
        <Question line={line} answer={answer} needs={needs} onKept={() => setAsksAgain(false)} />
      )}
    </Panel>
  )
}

const SAID = { yes: 'place_confirmed_yes', no: 'place_confirmed_no', 'not sure': 'place_confirmed_unsure' } as const

function Said({ said, onAgain }: { readonly said: Confirmation; readonly onAgain: () => void }) {
  const { say } = useSay()
  const readOnly = useAppState((state) => state.session.readOnly)
  return (
    <>
      <p className="confirm-said">{say(SAID[said.says])}</p>
      {said.note !== '' && <p>{say('label_noted', { note: said.note })}</p>}
      <div className="row">
        <Button disabled={readOnly} onClick={onAgain}>
          {say('do_say_again')}
        </Button>
      </div>
    </>
  )
}

interface QuestionProps extends ConfirmPanelProps {
  readonly needs: ConfirmNeeds
  readonly onKept: () => void
}

/** Chosen: enough for what was heard, too little for a report. */
const MOST_NOTE = 500

function Question({ line, answer, needs, onKept }: QuestionProps) {
  const { say } = useSay()
  const { store, nowS } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const [says, setSays] = useState<Confirmation['says'] | null>(null)
  const [note, setNote] = useState('')
  const isReady = needs.looked && needs.played && needs.flankPlayed && !readOnly
  const keep = () => {
    if (says === null || !isReady) return
    const [best] = answer.sources
    const { verdict } = answer
    const of = { verdict, alongM: best?.alongM ?? null, windowM: best?.windowM ?? null }
    store.dispatch(confirmPlace, { lineId: line.id, said: { id: newId(), timeS: nowS(), says, note, ...of } })
    onKept()
  }
  return (
    <>
      <p>{say('confirm_why')}</p>
      <Steps needs={needs} />
      <Choice
        label={say('confirm_question', { point: needs.bestPoint })}
        value={says}
        options={CONFIRMATIONS.map((value) => ({ value, words: say(CHOICE_WORDS.says[value]) }))}
        disabled={!isReady}
        onChange={setSays}
      />
      {isReady ? (
        <TextField label={say('label_note')} value={note} mostLength={MOST_NOTE} tall onChange={setNote} />
      ) : (
        <p className="soft">{say('confirm_missing')}</p>
      )}
      <Button kind="decision" wide disabled={!isReady || says === null} onClick={keep}>
        {say('do_keep_said')}
      </Button>
    </>
  )
}

function Steps({ needs }: { readonly needs: ConfirmNeeds }) {
  const { say } = useSay()
  const { store } = useApp()
  const { bestPoint, flanks, looked, played, flankPlayed } = needs
  const isOpen = useAppState((state) => state.session.chosenPoint === bestPoint)
  const isDone = looked && played && flankPlayed
  return (
    <>
      <ol className="confirm-steps">
        <ConfirmStep isDone={looked}>{say('confirm_look', { point: bestPoint })}</ConfirmStep>
        <ConfirmStep isDone={played}>{say('confirm_play', { point: bestPoint })}</ConfirmStep>
        {flanks.length > 0 && <ConfirmStep isDone={flankPlayed}>{flankWords(flanks, say)}</ConfirmStep>}
      </ol>
      {!isDone && (
        <div className="row">
          <Button
            kind={isOpen ? 'quiet' : 'main'}
            onClick={() => (isOpen ? showPointPanel() : store.dispatch(choosePoint, bestPoint))}
          >
            {isOpen ? say('do_show_point', { point: bestPoint }) : say('do_open_point', { point: bestPoint })}
          </Button>
        </div>
      )}
    </>
  )
}

function flankWords([first, second]: readonly number[], say: Say): string {
  return second === undefined
    ? say('confirm_play_flank', { first: first! })
    : say('confirm_play_flanks', { first: first!, second })
}
