import { startTransition, useEffect, useRef, useState } from 'react'

/** Width of an element as it changes, whole px; 0 until it is known. */
export function useWidthPx() {
  const ref = useRef<HTMLDivElement>(null)
  const [widthPx, setWidthPx] = useState(0)
  useEffect(() => {
    const element = ref.current
    if (element === null) return
    const watch = new ResizeObserver(() => {
      const widthPx = Math.floor(element.clientWidth)
      startTransition(() => setWidthPx(widthPx))
    })
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return { ref, widthPx }
}
