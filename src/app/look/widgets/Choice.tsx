import { useId } from 'react'
import './Choice.css'

export interface ChoiceProps<Value extends string> {
  readonly label: string
  readonly labelUnseen?: boolean
  /** `null`: none of them. */
  readonly value: Value | null
  readonly options: readonly { readonly value: Value; readonly words: string }[]
  readonly disabled?: boolean
  readonly onChange: (value: Value) => void
}

/** One of a few, all of them in view. */
export function Choice<Value extends string>(props: ChoiceProps<Value>) {
  const { label, labelUnseen, value, options, disabled, onChange } = props
  const name = useId()
  return (
    <fieldset className="choice" disabled={disabled}>
      <legend className={labelUnseen ? 'unseen' : 'choice-label'}>{label}</legend>
      <div className="choice-options">
        {options.map((option) => (
          <label key={option.value} className="choice-option">
            <input
              type="radio"
              name={name}
              className="choice-input"
              value={option.value}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span className="choice-words">{option.words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
