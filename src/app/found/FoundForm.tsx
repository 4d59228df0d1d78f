import { useState } from 'react'
import {
  FOUND_CAUSES,
  FOUND_WAYS,
  type FoundCause,
  type FoundWay,
  type KeptPhoto,
  MOST_FOUND_NOTE,
} from '../../../shared/job/found'
import { CHOICE_WORDS } from '../../../shared/report/choiceWords'
import { useApp, useAppState } from '../frame/useApp'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Choice } from '../look/widgets/Choice'
import { NumberField } from '../look/widgets/NumberField'
import { PhotoButton } from '../look/widgets/PhotoButton'
import { SelectField } from '../look/widgets/SelectField'
import { Switch } from '../look/widgets/Switch'
import { TextField } from '../look/widgets/TextField'
import { newId } from '../newId'
import { addFound } from '../store/actions/addFound'
import { VERSION } from '../version'
import { FoundPhoto } from './FoundPhoto'
import type { FoundPartProps } from './foundProps'
import { shownWindow } from './shownWindow'

const ALONG_M = 10_000

/** Told once, with the place as it was taped: nothing is filled in beforehand that could be kept unread. */
export function FoundForm({ line, answer, place }: FoundPartProps) {
  const { say } = useSay()
  const { store, nowS } = useApp()
  const readOnly = useAppState((state) => state.session.readOnly)
  const [way, setWay] = useState<FoundWay>('opened')
  const [alongM, setAlongM] = useState<number | null>(null)
  const [isNone, setIsNone] = useState(false)
  const [cause, setCause] = useState<FoundCause>('not seen')
  const [note, setNote] = useState('')
  const [photo, setPhoto] = useState<KeptPhoto | null>(null)
  const hasWindow = (answer?.sources.length ?? 0) > 0
  const isEmpty = isNone && hasWindow && way === 'opened'
  const keep = () => {
    const atM = isEmpty ? null : alongM
    const shown = shownWindow(answer, atM, VERSION)
    const said = { id: newId(), timeS: nowS(), way, cause: isEmpty ? ('not seen' as const) : cause, note, photo }
    store.dispatch(addFound, { lineId: line.id, found: { ...said, alongM: atM, shown } })
  }
  return (
    <div className="found-form">
      <p className="soft">{say('found_why')}</p>
      <Choice
        label={say('label_found_way')}
        value={way}
        options={FOUND_WAYS.map((value) => ({ value, words: say(CHOICE_WORDS.foundWay[value]) }))}
        disabled={readOnly}
        onChange={setWay}
      />
      {hasWindow && way === 'opened' && (
        <Switch words={say('label_found_none')} on={isNone} disabled={readOnly} onChange={setIsNone} />
      )}
      {!isEmpty && (
        <>
          <NumberField
            label={say('label_found_where')}
            value={alongM}
            unit="m"
            least={-ALONG_M}
            most={ALONG_M}
            disabled={readOnly}
            onChange={setAlongM}
            onWrong={() => setAlongM(null)}
          />
          <SelectField
            label={say('label_found_cause')}
            value={cause}
            options={FOUND_CAUSES.map((value) => ({ value, words: say(CHOICE_WORDS.foundCause[value]) }))}
            disabled={readOnly}
            onChange={setCause}
          />
        </>
      )}
      <TextField
        label={say('label_found_note')}
        value={note}
        mostLength={MOST_FOUND_NOTE}
        tall
        disabled={readOnly}
        onChange={setNote}
      />
      {photo && <FoundPhoto photo={photo} />}
      <div className="row">
        <PhotoButton
          words={say(photo === null ? 'do_found_photo' : 'do_found_other_photo')}
          disabled={readOnly}
          picker="found"
          place={place}
          onKept={({ sha256, bytes }) => setPhoto({ sha256, bytes })}
        />
      </div>
      <Button kind="decision" wide disabled={readOnly || (!isEmpty && alongM === null)} onClick={keep}>
        {say('do_keep_found')}
      </Button>
    </div>
  )
}
