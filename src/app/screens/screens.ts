import { type ComponentType, lazy } from 'react'
import type { WordKey } from '../../../shared/words/words'
import type { IconName } from '../look/widgets/Icon'
import { JobsScreen } from './jobs/JobsScreen'
import type { ScreenName } from './screenNames'

export interface ScreenEntry {
  /** Its name in the bar; a label without values. */
  readonly words: Extract<WordKey, 'label_jobs' | 'label_line' | 'label_place' | 'label_help'>
  readonly icon: IconName
  /** Shown only with an open job and line. */
  readonly needsJob: boolean
  readonly Screen: ComponentType
}

// The first screen comes with the page; the others follow as soon as it is shown, so that the first load stays small.
const LATER = {
  line: async () => (await import('./line/LineScreen')).LineScreen,
  place: async () => (await import('./place/PlaceScreen')).PlaceScreen,
  help: async () => (await import('./help/HelpScreen')).HelpScreen,
}

/** Every screen; the bar and the page come from this list. */
export const SCREENS: { readonly [Name in ScreenName]: ScreenEntry } = {
  jobs: { words: 'label_jobs', icon: 'jobs', needsJob: false, Screen: JobsScreen },
  line: { words: 'label_line', icon: 'line', needsJob: true, Screen: later(LATER.line) },
  place: { words: 'label_place', icon: 'place', needsJob: true, Screen: later(LATER.place) },
  help: { words: 'label_help', icon: 'help', needsJob: false, Screen: later(LATER.help) },
}

/** Fetches the screens that are not there yet. A failure shows when the screen is gone to. */
export function fetchScreens(): void {
  for (const load of Object.values(LATER)) void load().catch(() => undefined)
}

function later(load: () => Promise<ComponentType>): ComponentType {
  return lazy(async () => ({ default: await load() }))
}
