import { type ReactNode, useId, useState } from 'react'
import { type ReadQuantity, readQuantity } from '../../../../shared/words/readQuantity'
import { typedQuantity } from '../../../../shared/words/typedQuantity'
import { type Say, useSay } from '../../frame/useSay'
import './Field.css'

export interface NumberFieldProps {
  readonly label: string
  /** The label is only read out, because a heading says the same. */
  readonly labelUnseen?: boolean
  /** In the unit that files keep; `null` for not told. */
  readonly value: number | null
  /** `m`: shown in the reader's unit of length. Any other is written behind the field as it is; empty for none. */
  readonly unit: string
  readonly least?: number
  readonly most?: number
  /** May be left empty. */
  readonly optional?: boolean
  readonly hint?: ReactNode
  readonly disabled?: boolean
  /** Called with each number that is possible, as it is typed. */
  readonly onChange: (value: number | null) => void
  /** Called when what is typed cannot be meant: for a form that must not go on with the number before. */
  readonly onWrong?: () => void
  /** Called when the field is left: the end of one change. */
  readonly onDone?: () => void
}

/** A number with its unit. What cannot be meant is said below the field and changes nothing. */
export function NumberField(props: NumberFieldProps) {
  const { label, labelUnseen, value, unit, hint, optional, disabled, onChange, onDone } = props
  const { say, units } = useSay()
  const [typed, setTyped] = useState<string | null>(null)
  const id = useId()
  const wrong = typed === null ? null : wrongWith(readQuantity(typed, unit, units), props, say)
  const change = (text: string) => {
    setTyped(text)
    const read = readQuantity(text, unit, units)
    if (wrongWith(read, props, say) === null) onChange(read.kind === 'number' ? read.value : null)
    else props.onWrong?.()
  }
  const leave = () => {
    if (wrong === null) setTyped(null)
    onDone?.()
  }
  const shownUnit = unit === 'm' ? units.length : unit
  const note = wrong ?? hint
  return (
    <div className="field">
      <label htmlFor={id} className={labelUnseen ? 'unseen' : 'field-label'}>
        {label}
      </label>
      <div className="field-box" data-wrong={wrong !== null}>
        <input
          id={id}
          className="field-input"
          inputMode="decimal"
          autoComplete="off"
          enterKeyHint="done"
          value={typed ?? typedQuantity(value, unit, units)}
          placeholder={optional ? say('label_none') : undefined}
          aria-invalid={wrong !== null}
          aria-describedby={note ? `${id}-note` : undefined}
          disabled={disabled}
          onChange={(event) => change(event.target.value)}
          onBlur={leave}
        />
        {shownUnit !== '' && <span className="field-unit">{shownUnit}</span>}
      </div>
      {note && (
        <p id={`${id}-note`} className={wrong === null ? 'field-hint' : 'field-wrong'}>
          {note}
        </p>
      )}
    </div>
  )
}

function wrongWith(read: ReadQuantity, { optional, unit, least, most }: NumberFieldProps, say: Say): string | null {
  if (read.kind === 'empty') return optional ? null : say('field_missing')
  if (read.kind === 'no number') return say('field_no_number')
  const shown = (bound: number) => (unit === 'm' ? say('label_length', { m: bound }) : String(bound))
  if (least !== undefined && read.value < least) return say('field_too_low', { least: shown(least) })
  if (most !== undefined && read.value > most) return say('field_too_high', { most: shown(most) })
  return null
}
