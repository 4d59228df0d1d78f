import { useSyncExternalStore } from 'react'

/** From here on there is room for two columns, as in the style sheets; and for a table in the narrower one. */
const ROOMS = { columns: '(min-width: 64rem)', table: '(min-width: 85rem)' } as const

/** True where there is room for it, as on a desk. */
export function useIsWide(room: keyof typeof ROOMS): boolean {
  return useSyncExternalStore(
    (listener) => {
      const query = window.matchMedia(ROOMS[room])
      query.addEventListener('change', listener)
      return () => query.removeEventListener('change', listener)
    },
    () => window.matchMedia(ROOMS[room]).matches,
  )
}
