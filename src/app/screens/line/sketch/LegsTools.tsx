import { BARE_SITE } from '../../../../../shared/job/site'
import { lineLegs } from '../../../../../shared/line/lineLegs'
import { Button } from '../../../look/widgets/Button'
import { Choice } from '../../../look/widgets/Choice'
import { Icon } from '../../../look/widgets/Icon'
import { NumberField } from '../../../look/widgets/NumberField'
import { changeLegs } from '../../../store/actions/changeLegs'
import { changeSnap } from '../../../store/actions/changeSnap'
import { LENGTH_LIMITS } from '../linePart'
import { cornerNumber, cornerWords } from './cornerWords'
import { removeCorner, splitLeg } from './legsMode'
import type { ModeContext } from './padMode'

/** The leg that ends at the chosen corner, and how corners snap. */
export function LegsTools({ of }: { readonly of: ModeContext }) {
  const { jobLine, store, say, disabled, chosenId, choices, change } = of
  const legs = lineLegs(jobLine.line)
  const chosen = chosenId?.startsWith('corner-') ? cornerNumber(chosenId) : -1
  const lineId = jobLine.id
  return (
    <>
      {chosen > 0 && chosen <= legs.length && <LegTools of={of} number={chosen} />}
      {chosen === 0 && legs.length > 0 && <p className="soft">{say('pad_start_chosen')}</p>}
      <div className="line-pair">
        <Choice
          label={say('label_pad_pull')}
          value={choices.keepLengths ? 'keep' : 'change'}
          options={[
            { value: 'change', words: say('label_pad_pull_change') },
            { value: 'keep', words: say('label_pad_pull_keep') },
          ]}
          disabled={disabled}
          onChange={(value) => change({ keepLengths: value === 'keep' })}
        />
        <NumberField
          label={say('label_pad_snap')}
          value={(jobLine.site ?? BARE_SITE).snapDeg}
          unit={say('label_degrees')}
          least={1}
          most={179}
          optional
          hint={say('pad_snap_hint')}
          disabled={disabled}
          onChange={(snapDeg) => store.dispatch(changeSnap, { lineId, snapDeg })}
          onDone={store.closeStep}
        />
      </div>
    </>
  )
}

/** Length and turn of a leg, and its corner taken out or another put in. */
function LegTools({ of, number }: { readonly of: ModeContext; readonly number: number }) {
  const { jobLine, store, say, disabled } = of
  const legs = lineLegs(jobLine.line)
  const leg = legs[number - 1]!
  const put = (changed: Partial<typeof leg>) => {
    store.dispatch(changeLegs, { lineId: jobLine.id, legs: legs.with(number - 1, { ...leg, ...changed }) })
  }
  const turn = (turnDeg: number) => {
    put({ turnDeg })
    store.closeStep()
  }
  return (
    <div className="sketchpad-chosen">
      <h3>{cornerWords(of, number, legs.length + 1)}</h3>
      <div className="line-pair">
        <NumberField
          key={number}
          label={say('label_pad_leg_length', { number })}
          value={leg.lengthM}
          unit="m"
          {...LENGTH_LIMITS}
          disabled={disabled}
          onChange={(lengthM) => put({ lengthM: lengthM! })}
          onDone={store.closeStep}
        />
        {number > 1 && (
          <NumberField
            key={`turn ${number}`}
            label={say('label_pad_leg_turn', { number })}
            value={leg.turnDeg}
            unit={say('label_degrees')}
            least={-180}
            most={180}
            hint={say('pad_turn_hint')}
            disabled={disabled}
            onChange={(turnDeg) => put({ turnDeg: turnDeg! })}
            onDone={store.closeStep}
          />
        )}
      </div>
      <div className="row">
        {number > 1 && (
          <>
            <Button disabled={disabled} onClick={() => turn(90)}>
              {say('do_turn_left')}
            </Button>
            <Button disabled={disabled} onClick={() => turn(0)}>
              {say('do_turn_none')}
            </Button>
            <Button disabled={disabled} onClick={() => turn(-90)}>
              {say('do_turn_right')}
            </Button>
          </>
        )}
        <Button icon={<Icon name="add" />} disabled={disabled} onClick={() => splitLeg(of, number)}>
          {say('do_split_leg')}
        </Button>
        <Button
          icon={<Icon name="remove" />}
          disabled={disabled || legs.length < 2}
          onClick={() => removeCorner(of, number)}
        >
          {say('do_remove_corner')}
        </Button>
      </div>
    </div>
  )
}
