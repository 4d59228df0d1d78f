import { createContext, useContext, useSyncExternalStore } from 'react'
import type { App } from '../startApp'
import type { AppState } from '../store/state'

export const AppContext = createContext<App | null>(null)

/** The parts of the program: store, analyst, opener and so on. */
export function useApp(): App {
  const app = useContext(AppContext)
  if (app === null) throw new Error('useApp is called outside the page')
  return app
}

/**
 * Part of the state; renders again when it changes.
 *
 * @param select Must give the same object for the same state: no new lists or objects.
 */
export function useAppState<Part>(select: (state: AppState) => Part): Part {
  const { store } = useApp()
  return useSyncExternalStore(store.subscribe, () => select(store.get()))
}
