import { useEffect, useRef } from 'react'

/** A key, wherever on the page it means nothing else. */
export function useKeys(keys: string, onKey: (index: number) => void): void {
  const latest = useRef(onKey)
  latest.current = onKey
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const index = keys.indexOf(event.key)
      const isOther = (event.target as HTMLElement).closest('input:not([type=radio]), select, textarea, summary')
      const isPressed = event.key === ' ' && (event.target as HTMLElement).closest('button, a')
      if (event.key.length !== 1 || index < 0 || event.repeat || isOther || isPressed) return
      if (event.ctrlKey || event.metaKey || event.altKey) return
      event.preventDefault()
      latest.current(index)
    }
    document.addEventListener('keydown', press)
    return () => document.removeEventListener('keydown', press)
  }, [keys])
}
