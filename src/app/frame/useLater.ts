import { startTransition, useEffect, useState } from 'react'

/** False at first, true soon after: what hangs on it is rendered in slices, and what is touched meanwhile answers first. */
export function useLater(): boolean {
  const [isLater, setLater] = useState(false)
  useEffect(() => startTransition(() => setLater(true)), [])
  return isLater
}
