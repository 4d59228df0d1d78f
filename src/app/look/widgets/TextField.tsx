import { useId } from 'react'
import './Field.css'

export interface TextFieldProps {
  readonly label: string
  readonly value: string
  readonly mostLength: number
  /** Several lines. */
  readonly tall?: boolean
  readonly disabled?: boolean
  readonly onChange: (value: string) => void
  readonly onDone?: () => void
}

/** A line of text, or a few. */
export function TextField({ label, value, mostLength, tall = false, disabled, onChange, onDone }: TextFieldProps) {
  const id = useId()
  const Input = tall ? 'textarea' : 'input'
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <div className="field-box">
        <Input
          id={id}
          className="field-input"
          autoComplete="off"
          enterKeyHint={tall ? undefined : 'done'}
          rows={tall ? 3 : undefined}
          maxLength={mostLength}
          value={value}
          disabled={disabled}
          onChange={(event) => onChange(event.target.value)}
          onBlur={onDone}
        />
      </div>
    </div>
  )
}
