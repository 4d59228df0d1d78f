import { useEffect } from 'react'
import { useApp } from './useApp'

/** Undo and redo by keyboard; inside a field the browser's own come first. */
export function useShortcuts(): void {
  const { store } = useApp()
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return
      const key = event.key.toLowerCase()
      const step = key === 'y' || (key === 'z' && event.shiftKey) ? store.redo : key === 'z' ? store.undo : null
      if (step === null) return
      event.preventDefault()
      step()
    }
    document.addEventListener('keydown', onKey)
    return () => document.removeEventListener('keydown', onKey)
  }, [store])
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input:not([type=radio]), textarea, select')
}
