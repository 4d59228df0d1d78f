import type { ReactNode } from 'react'
import { useSay } from '../../frame/useSay'
import { Button } from './Button'
import { Icon } from './Icon'
import './Notice.css'

export interface NoticeProps {
  /** `wrong`: something did not work. `odd`: worth knowing. `good`: it worked. */
  readonly severity: 'wrong' | 'odd' | 'good'
  readonly children: ReactNode
  /** What to do about it, below the words. */
  readonly actions?: ReactNode
  readonly onDismiss?: () => void
}

/** A message at the place it belongs. */
export function Notice({ severity, children, actions, onDismiss }: NoticeProps) {
  const { say } = useSay()
  return (
    <div className={`notice notice-${severity}`} role={severity === 'wrong' ? 'alert' : 'status'}>
      <div className="notice-words">
        {children}
        {actions && <div className="row">{actions}</div>}
      </div>
      {onDismiss && (
        <Button kind="bare" iconOnly icon={<Icon name="close" />} onClick={onDismiss}>
          {say('do_dismiss')}
        </Button>
      )}
    </div>
  )
}
