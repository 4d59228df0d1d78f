import { MOST_SIGN_NOTE, SIGN_KINDS, type Sign } from '../../../../../shared/job/signs'
import { Button } from '../../../look/widgets/Button'
import { Icon } from '../../../look/widgets/Icon'
import { NumberField } from '../../../look/widgets/NumberField'
import { SelectField } from '../../../look/widgets/SelectField'
import { TextField } from '../../../look/widgets/TextField'
import { SIGN_WORDS } from '../../../sketch/signWords'
import { changeSign } from '../../../store/actions/changeSign'
import { ALONG_LIMITS } from '../linePart'
import type { ModeContext } from './padMode'
import { addSign, signsMode } from './signsMode'

/** What the next tap pins, and what is told of a chosen sign. */
export function SignsTools({ of }: { readonly of: ModeContext }) {
  const { jobLine, say, disabled, chosenId, choices, change } = of
  const chosen = jobLine.signs?.find(({ id }) => `sign-${id}` === chosenId)
  const { lengthM } = jobLine.line
  const kinds = SIGN_KINDS.map((kind) => ({ value: kind, words: say(SIGN_WORDS[kind]) }))
  return (
    <>
      {chosen && <SignFields key={chosen.id} of={of} sign={chosen} />}
      <SelectField
        label={say('label_pad_sign')}
        value={choices.sign}
        options={kinds}
        disabled={disabled}
        onChange={(sign) => change({ sign })}
      />
      <Button
        icon={<Icon name="add" />}
        disabled={disabled || lengthM === null}
        onClick={() => addSign(of, { alongM: lengthM! / 2, offsetM: 0 })}
      >
        {say('do_add_untapped')}
      </Button>
      <p className="soft">{say('pad_signs_apart')}</p>
    </>
  )
}

function SignFields({ of, sign }: { readonly of: ModeContext; readonly sign: Sign }) {
  const { jobLine, say, store, disabled } = of
  const put = (changed: Partial<Sign>) =>
    store.dispatch(changeSign, { lineId: jobLine.id, sign: { ...sign, ...changed } })
  const common = { unit: 'm', disabled, onDone: store.closeStep, ...ALONG_LIMITS } as const
  return (
    <div className="sketchpad-chosen">
      <h3>{say(SIGN_WORDS[sign.kind])}</h3>
      <div className="line-pair">
        <NumberField
          label={say('label_pad_along')}
          value={sign.alongM}
          {...common}
          onChange={(alongM) => put({ alongM: alongM! })}
        />
        <NumberField
          label={say('label_pad_beside')}
          value={sign.offsetM}
          {...common}
          hint={say('pad_beside_hint')}
          onChange={(offsetM) => put({ offsetM: offsetM! })}
        />
      </div>
      <TextField
        label={say('label_pad_note')}
        value={sign.note}
        mostLength={MOST_SIGN_NOTE}
        tall
        disabled={disabled}
        onChange={(note) => put({ note })}
        onDone={store.closeStep}
      />
      <Button icon={<Icon name="remove" />} disabled={disabled} onClick={() => signsMode(of).remove(`sign-${sign.id}`)}>
        {say('do_remove_chosen')}
      </Button>
    </div>
  )
}
