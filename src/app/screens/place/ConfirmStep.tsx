import type { ReactNode } from 'react'
import { useSay } from '../../frame/useSay'

/** One thing to be done first; done or not is told by shape and in words. */
export function ConfirmStep({ isDone, children }: { readonly isDone: boolean; readonly children: ReactNode }) {
  const { say } = useSay()
  return (
    <li className="confirm-step" data-done={isDone}>
      <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true">
        <rect x="3" y="3" width="18" height="18" rx="5" />
        {isDone && <path d="m7 12.500 3.500 3.500L17 8.500" />}
      </svg>
      <span>
        {children} <span className="confirm-state">{say(isDone ? 'label_done' : 'label_to_do')}</span>
      </span>
    </li>
  )
}
