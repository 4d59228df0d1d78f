import { MOST_END_NAME } from '../../../../shared/job/site'
import { type Leg, lineLegs } from '../../../../shared/line/lineLegs'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Choice } from '../../look/widgets/Choice'
import { Icon } from '../../look/widgets/Icon'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { TextField } from '../../look/widgets/TextField'
import { changeLegs } from '../../store/actions/changeLegs'
import { nameEnds } from '../../store/actions/nameEnds'
import { LENGTH_LIMITS, type LinePartProps } from './linePart'

/** A new leg, until it is told otherwise: common practice, no source. */
const NEW_LEG: Leg = { lengthM: 1, turnDeg: 90 }

/** Straight pieces and the bends between them. */
export function LegsPart({ lineId, line, site, disabled, onDone }: LinePartProps) {
  const { say } = useSay()
  const { store } = useApp()
  const legs = lineLegs(line)
  const put = (next: readonly Leg[]) => store.dispatch(changeLegs, { lineId, legs: next })
  const shown = legs.length === 0 ? [null] : legs
  return (
    <Panel heading={say('heading_legs')}>
      <p className="soft">{say('legs_intro')}</p>
      <ol className="line-items">
        {shown.map((leg, i) => (
          <li key={String(i)} className="line-item">
            <LegFields
              number={i + 1}
              leg={leg}
              disabled={disabled}
              onDone={onDone}
              onChange={(changed) => put(legs.length === 0 ? [changed] : legs.with(i, changed))}
              onRemove={legs.length > 1 ? () => put(legs.toSpliced(i, 1)) : null}
            />
          </li>
        ))}
      </ol>
      <div className="row">
        <Button
          icon={<Icon name="add" />}
          disabled={disabled || legs.length === 0}
          onClick={() => put([...legs, NEW_LEG])}
        >
          {say('do_add_leg')}
        </Button>
        {line.lengthM !== null && (
          <p>
            {say('label_total')}: <strong>{say('label_length', { m: line.lengthM })}</strong>
          </p>
        )}
      </div>
      <div className="line-pair">
        {(['startName', 'endName'] as const).map((end) => (
          <TextField
            key={end}
            label={say(end === 'startName' ? 'label_start_name' : 'label_end_name')}
            value={site[end]}
            mostLength={MOST_END_NAME}
            disabled={disabled}
            onChange={(name) => store.dispatch(nameEnds, { lineId, end, name })}
            onDone={onDone}
          />
        ))}
      </div>
    </Panel>
  )
}

interface LegFieldsProps {
  readonly number: number
  /** `null` for a line whose length is not told. */
  readonly leg: Leg | null
  readonly disabled: boolean
  readonly onChange: (leg: Leg) => void
  readonly onDone: () => void
  /** `null` for the last one that is left. */
  readonly onRemove: (() => void) | null
}

function LegFields({ number, leg, disabled, onChange, onDone, onRemove }: LegFieldsProps) {
  const { say } = useSay()
  const turnDeg = leg?.turnDeg ?? 0
  return (
    <>
      <div className="line-item-head">
        <h3>{say('label_leg', { number })}</h3>
        {onRemove && (
          <Button kind="bare" iconOnly icon={<Icon name="remove" />} disabled={disabled} onClick={onRemove}>
            {say('do_remove_leg', { number })}
          </Button>
        )}
      </div>
      <div className="line-pair">
        {number > 1 && (
          <>
            <Choice
              label={say('label_leg_turn', { number })}
              value={turnDeg < 0 ? 'right' : 'left'}
              options={[
                { value: 'left', words: say('label_turn_left') },
                { value: 'right', words: say('label_turn_right') },
              ]}
              disabled={disabled}
              onChange={(side) =>
                onChange({ lengthM: leg!.lengthM, turnDeg: side === 'left' ? Math.abs(turnDeg) : -Math.abs(turnDeg) })
              }
            />
            <NumberField
              label={say('label_turn_by', { number })}
              value={Math.abs(turnDeg)}
              unit={say('label_degrees')}
              least={0}
              most={180}
              disabled={disabled}
              onChange={(deg) => onChange({ lengthM: leg!.lengthM, turnDeg: turnDeg < 0 ? -deg! : deg! })}
              onDone={onDone}
            />
          </>
        )}
        <NumberField
          label={say('label_leg_length', { number })}
          value={leg?.lengthM ?? null}
          unit="m"
          {...LENGTH_LIMITS}
          disabled={disabled}
          onChange={(lengthM) => onChange({ lengthM: lengthM!, turnDeg })}
          onDone={onDone}
        />
      </div>
    </>
  )
}
