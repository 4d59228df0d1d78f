import { COVERS } from '../../../../../shared/line/line'
import { Button } from '../../../look/widgets/Button'
import { Icon } from '../../../look/widgets/Icon'
import { NumberField } from '../../../look/widgets/NumberField'
import { SelectField } from '../../../look/widgets/SelectField'
import { changeStretches } from '../../../store/actions/changeStretches'
import { COVER_WORDS } from '../kindWords'
import { DEPTH_LIMITS } from '../linePart'
import { groundMode, layCover, stretchNumber } from './groundMode'
import type { ModeContext } from './padMode'

/** Which cover the next two taps lay, and the depth under a chosen one. */
export function GroundTools({ of }: { readonly of: ModeContext }) {
  const { jobLine, say, disabled, chosenId, choices, change, store } = of
  const { stretches, lengthM } = jobLine.line
  const index = stretchNumber(chosenId)
  const chosen = index === null ? undefined : stretches[index]
  return (
    <>
      {chosen && (
        <div className="sketchpad-chosen" key={chosenId}>
          <h3>
            {say('label_stretch_line', {
              cover: say(COVER_WORDS[chosen.cover]),
              from_m: chosen.fromM,
              to_m: chosen.toM,
            })}
          </h3>
          <NumberField
            label={say('label_pad_depth')}
            value={chosen.depthM}
            unit="m"
            optional
            {...DEPTH_LIMITS}
            disabled={disabled}
            onChange={(depthM) =>
              store.dispatch(changeStretches, {
                lineId: jobLine.id,
                stretches: stretches.with(index!, { ...chosen, depthM }),
              })
            }
            onDone={store.closeStep}
          />
          <Button icon={<Icon name="remove" />} disabled={disabled} onClick={() => groundMode(of).remove(chosenId!)}>
            {say('do_remove_chosen')}
          </Button>
        </div>
      )}
      <SelectField
        label={say('label_pad_cover')}
        value={choices.cover}
        options={COVERS.map((cover) => ({ value: cover, words: say(COVER_WORDS[cover]) }))}
        disabled={disabled}
        onChange={(cover) => change({ cover })}
      />
      <div className="row">
        <Button disabled={disabled || lengthM === null} onClick={() => layCover(of, 0, lengthM!)}>
          {say('do_cover_all')}
        </Button>
        {choices.fromM !== null && <Button onClick={() => change({ fromM: null })}>{say('do_cover_anew')}</Button>}
      </div>
    </>
  )
}
