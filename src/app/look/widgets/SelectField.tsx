import { useId } from 'react'
import './Field.css'

export interface SelectFieldProps<Value extends string> {
  readonly label: string
  readonly labelUnseen?: boolean
  readonly value: Value
  readonly options: readonly { readonly value: Value; readonly words: string }[]
  readonly disabled?: boolean
  readonly onChange: (value: Value) => void
}

/** One of many. For up to four, `Choice` shows them all at once. */
export function SelectField<Value extends string>(props: SelectFieldProps<Value>) {
  const { label, labelUnseen, value, options, disabled, onChange } = props
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id} className={labelUnseen ? 'unseen' : 'field-label'}>
        {label}
      </label>
      <div className="field-box">
        <select
          id={id}
          className="field-input"
          value={value}
          disabled={disabled}
          onChange={(event) => onChange(event.target.value as Value)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.words}
            </option>
          ))}
        </select>
      </div>
    </div>
  )
}
