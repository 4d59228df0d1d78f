import { type ReactNode, useId } from 'react'
import './Switch.css'

export interface SwitchProps {
  readonly words: string
  readonly on: boolean
  readonly hint?: ReactNode
  readonly disabled?: boolean
  readonly onChange: (on: boolean) => void
}

/** Something that is on or off: a box to tick, with room for a thumb. */
export function Switch({ words, on, hint, disabled, onChange }: SwitchProps) {
  const id = useId()
  return (
    <div className="switch">
      <label className="switch-label">
        <input
          type="checkbox"
          className="switch-box"
          checked={on}
          disabled={disabled}
          aria-describedby={hint ? id : undefined}
          onChange={(event) => onChange(event.target.checked)}
        />
        <span>{words}</span>
      </label>
      {hint && (
        <p id={id} className="switch-hint soft">
          {hint}
        </p>
      )}
    </div>
  )
}
