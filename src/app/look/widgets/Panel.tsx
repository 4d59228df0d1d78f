import { type ReactNode, useId } from 'react'
import './Panel.css'

export interface PanelProps {
  readonly heading: ReactNode
  /** The heading is only read out. */
  readonly headingUnseen?: boolean
  /** Beside the heading, as a button. */
  readonly aside?: ReactNode
  readonly children: ReactNode
}

/** A part of a screen with its heading, on a sheet of its own. */
export function Panel({ heading, headingUnseen = false, aside, children }: PanelProps) {
  const id = useId()
  return (
    <section className="panel" aria-labelledby={id}>
      <div className={headingUnseen && !aside ? 'unseen' : 'panel-head'}>
        <h2 id={id} className={headingUnseen ? 'unseen' : undefined}>
          {heading}
        </h2>
        {aside}
      </div>
      {children}
    </section>
  )
}
