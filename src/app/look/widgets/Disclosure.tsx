import type { ReactNode } from 'react'
import { Icon } from './Icon'
import './Disclosure.css'

export interface DisclosureProps {
  readonly summary: ReactNode
  readonly open?: boolean
  readonly children: ReactNode
}

/** More, for those who want it. */
export function Disclosure({ summary, open, children }: DisclosureProps) {
  return (
    <details className="disclosure" open={open}>
      <summary className="disclosure-summary">
        <Icon name="next" />
        <span>{summary}</span>
      </summary>
      <div className="disclosure-body">{children}</div>
    </details>
  )
}
