import type { ButtonHTMLAttributes, ReactNode } from 'react'
import './Button.css'

export interface ButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className' | 'type'> {
  /**
   * `main`: the one main action of a screen. `decision`: what commits somebody. `quiet`: everything else. `bare`: without
   * a frame, beside other things.
   */
  readonly kind?: 'main' | 'decision' | 'quiet' | 'bare'
  readonly icon?: ReactNode
  /** Only the icon is seen; the words are read out. */
  readonly iconOnly?: boolean
  /** Fills its row, as at the foot of a phone. */
  readonly wide?: boolean
}

export function Button({ kind = 'quiet', icon, iconOnly = false, wide = false, children, ...rest }: ButtonProps) {
  const classes = ['button', `button-${kind}`, iconOnly && 'button-icon-only', wide && 'button-wide']
  return (
    <button type="button" className={classes.filter(Boolean).join(' ')} {...rest}>
      {icon}
      <span className={iconOnly ? 'unseen' : 'button-words'}>{children}</span>
    </button>
  )
}
