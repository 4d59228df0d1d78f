import { type RefObject, useEffect, useRef } from 'react'

export interface WalkKeys {
  readonly next: () => void
  readonly back: () => void
  readonly mark: () => void
  readonly loop: () => void
  readonly play: () => void
}

const KEYS: Readonly<Record<string, keyof WalkKeys>> = { n: 'next', b: 'back', m: 'mark', l: 'loop', ' ': 'play' }

/** Everything that listening from point to point needs, by keyboard; inside a field letters are letters. */
export function useWalkKeys(frame: RefObject<HTMLElement | null>, keys: WalkKeys): void {
  const latest = useRef(keys)
  latest.current = keys
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const does = KEYS[event.key.toLowerCase()]
      const target = event.target as HTMLElement
      if (does === undefined || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return
      if (event.repeat || target.closest('input:not([type=radio], [type=checkbox]), textarea, select') !== null) return
      const isElsewhere = target !== document.body && target.id !== 'content' && !frame.current?.contains(target)
      const presses = event.key === ' ' && target.closest('button, input, summary, a') !== null
      if (isElsewhere || presses) return
      event.preventDefault()
      latest.current[does]()
    }
    document.addEventListener('keydown', onKey)
    return () => document.removeEventListener('keydown', onKey)
  }, [frame])
}
