import { type ReactNode, useState } from 'react'
import { Icon } from './Icon'
import './Disclosure.css'

export interface DisclosureProps {
  readonly summary: ReactNode
  readonly open?: boolean
  /** As a function: made only once it is opened, for long tables. */
  readonly children: ReactNode | (() => ReactNode)
}

/** More, for those who want it. */
export function Disclosure({ summary, open, children }: DisclosureProps) {
  const [wasOpened, setWasOpened] = useState(open === true)
  const isMade = wasOpened || typeof children !== 'function'
  return (
    <details className="disclosure" open={open} onToggle={() => setWasOpened(true)}>
      <summary className="disclosure-summary">
        <Icon name="next" />
        <span>{summary}</span>
      </summary>
      <div className="disclosure-body">{isMade && (typeof children === 'function' ? children() : children)}</div>
    </details>
  )
}
