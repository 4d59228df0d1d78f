import { useSyncExternalStore } from 'react'
import { SCREEN_NAMES, type ScreenName } from './screens/screenNames'

/** Where the page is: `#/jobs`, `#/practice`, `#/help`, `#/job/<job>/<line>/place`. */
export interface Route {
  readonly screen: ScreenName
  readonly jobId: string | null
  readonly lineId: string | null
}

const FIRST: Route = { screen: 'jobs', jobId: null, lineId: null }

/** @returns The list of jobs for anything that is no address of this page. */
export function readRoute(hash: string): Route {
  const [top, jobId, lineId, screen] = hash.replace(/^#\//, '').split('/')
  if (top === 'help' || top === 'practice') return { ...FIRST, screen: top }
  if (top !== 'job' || !jobId || !lineId) return FIRST
  const known = SCREEN_NAMES.find((name) => name === screen) ?? 'place'
  return { screen: known, jobId, lineId }
}

export function routeHash({ screen, jobId, lineId }: Route): string {
  return jobId === null || lineId === null ? `#/${screen}` : `#/job/${jobId}/${lineId}/${screen}`
}

export function goTo(route: Route): void {
  window.location.hash = routeHash(route)
}

/** The present route; renders again when it changes. */
export function useRoute(): Route {
  const hash = useSyncExternalStore(
    (listener) => {
      window.addEventListener('hashchange', listener)
      return () => window.removeEventListener('hashchange', listener)
    },
    () => window.location.hash,
  )
  return readRoute(hash)
}
