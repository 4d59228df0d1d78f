import { useSyncExternalStore } from 'react'

/** As in the style sheets: from here on there is room for two columns. */
const WIDE = '(min-width: 64rem)'

/** True on a desk. */
export function useIsWide(): boolean {
  return useSyncExternalStore(
    (listener) => {
      const query = window.matchMedia(WIDE)
      query.addEventListener('change', listener)
      return () => query.removeEventListener('change', listener)
    },
    () => window.matchMedia(WIDE).matches,
  )
}
