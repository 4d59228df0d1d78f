import { useEffect, useRef, useState } from 'react'

/** Width of an element as it changes, whole px; 0 until it is known. */
export function useWidthPx() {
  const ref = useRef<HTMLDivElement>(null)
  const [widthPx, setWidthPx] = useState(0)
  useEffect(() => {
    const element = ref.current
    if (element === null) return
    const watch = new ResizeObserver(() => setWidthPx(Math.floor(element.clientWidth)))
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return { ref, widthPx }
}
