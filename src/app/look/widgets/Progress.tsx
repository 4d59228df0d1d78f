import { useId } from 'react'
import { useSay } from '../../frame/useSay'
import { Button } from './Button'
import './Progress.css'

export interface ProgressProps {
  readonly words: string
  readonly done: number
  /** 0 while it is not known. */
  readonly total: number
  readonly onCancel?: () => void
}

/** A long step: how far it is, and a way out. */
export function Progress({ words, done, total, onCancel }: ProgressProps) {
  const { say } = useSay()
  const id = useId()
  const isKnown = total > 1
  return (
    <div className="progress">
      <div className="progress-words">
        <span id={id} role="status">
          {words}
        </span>
        {isKnown && <span className="soft">{say('label_progress', { done, total })}</span>}
      </div>
      <progress
        className="progress-bar"
        aria-labelledby={id}
        max={isKnown ? total : 1}
        value={isKnown ? done : undefined}
      />
      {onCancel && <Button onClick={onCancel}>{say('do_cancel')}</Button>}
    </div>
  )
}
