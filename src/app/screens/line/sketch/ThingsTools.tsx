import { FITTING_KINDS, NOISE_KINDS } from '../../../../../shared/line/line'
import { Button } from '../../../look/widgets/Button'
import { Icon } from '../../../look/widgets/Icon'
import { NumberField } from '../../../look/widgets/NumberField'
import { SelectField } from '../../../look/widgets/SelectField'
import { ALONG_LIMITS } from '../linePart'
import type { ModeContext, ThingKind } from './padMode'
import { addThing, thingAt, thingsMode, thingsOf, thingWords } from './thingsMode'

const KINDS: readonly ThingKind[] = [
  ...FITTING_KINDS.map((kind): ThingKind => `fitting ${kind}`),
  'inlet',
  ...NOISE_KINDS.map((kind): ThingKind => `noise ${kind}`),
]

/** What the next tap puts on the line, and where a chosen one is. */
export function ThingsTools({ of }: { readonly of: ModeContext }) {
  const { jobLine, say, store, disabled, chosenId, choices, change } = of
  const chosen = thingsOf(of).find(({ id }) => id === chosenId)
  const { lengthM } = jobLine.line
  return (
    <>
      {chosen && (
        <div className="sketchpad-chosen" key={chosen.id}>
          <h3>{thingWords(of, chosen.kind)}</h3>
          <NumberField
            label={say('label_pad_along')}
            value={chosen.atM}
            unit="m"
            {...ALONG_LIMITS}
            disabled={disabled}
            onChange={(atM) => atM !== null && thingAt(of, chosen.id, atM)?.commit(store)}
            onDone={store.closeStep}
          />
          <Button icon={<Icon name="remove" />} disabled={disabled} onClick={() => thingsMode(of).remove(chosen.id)}>
            {say('do_remove_chosen')}
          </Button>
        </div>
      )}
      <SelectField
        label={say('label_pad_thing')}
        value={choices.thing}
        options={KINDS.map((kind) => ({ value: kind, words: thingWords(of, kind) }))}
        disabled={disabled}
        onChange={(thing) => change({ thing })}
      />
      <Button
        icon={<Icon name="add" />}
        disabled={disabled || lengthM === null}
        onClick={() => addThing(of, chosen?.atM ?? lengthM! / 2)}
      >
        {say('do_add_untapped')}
      </Button>
    </>
  )
}
