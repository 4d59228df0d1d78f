import type { ComponentType } from 'react'
import type { WordKey } from '../../../shared/words/words'
import type { IconName } from '../look/widgets/Icon'
import { HelpScreen } from './help/HelpScreen'
import { JobsScreen } from './jobs/JobsScreen'
import { LineScreen } from './line/LineScreen'
import { PlaceScreen } from './place/PlaceScreen'
import type { ScreenName } from './screenNames'

export interface ScreenEntry {
  /** Its name in the bar; a label without values. */
  readonly words: Extract<WordKey, 'label_jobs' | 'label_line' | 'label_place' | 'label_help'>
  readonly icon: IconName
  /** Shown only with an open job and line. */
  readonly needsJob: boolean
  readonly Screen: ComponentType
}

/** Every screen; the bar and the page come from this list. */
export const SCREENS: { readonly [Name in ScreenName]: ScreenEntry } = {
  jobs: { words: 'label_jobs', icon: 'jobs', needsJob: false, Screen: JobsScreen },
  line: { words: 'label_line', icon: 'line', needsJob: true, Screen: LineScreen },
  place: { words: 'label_place', icon: 'place', needsJob: true, Screen: PlaceScreen },
  help: { words: 'label_help', icon: 'help', needsJob: false, Screen: HelpScreen },
}
