import { type ComponentType, createElement, lazy, useState } from 'react'
import type { WordKey } from '../../../shared/words/words'
import { useAppState } from '../frame/useApp'
import type { IconName } from '../look/widgets/Icon'
import { nextTask } from '../nextTask'
import { isAnyBlind, isBlind } from '../review/reviews'
import type { AppState } from '../store/state'
import { JobsScreen } from './jobs/JobsScreen'
import type { ScreenName } from './screenNames'

export interface ScreenEntry {
  /** Its name in the bar; a label without values. */
  readonly words: Extract<
    WordKey,
    | 'label_jobs'
    | 'label_line'
    | 'label_pressure_screen'
    | 'label_listen'
    | 'label_place'
    | 'label_mend'
    | 'label_report'
    | 'label_second_ear'
    | 'label_practice'
    | 'label_help'
  >
  /** In the bar of a phone, where the name itself is too long for it. */
  readonly shortWords?: 'label_second_ear_short'
  readonly icon: IconName
  /** Shown only with an open job and line. */
  readonly needsJob: boolean
  readonly Screen: ComponentType
}

// The first screen comes with the page; the others follow as soon as it is shown, so that the first load stays small.
const LATER = {
  line: later(async () => (await import('./line/LineScreen')).LineScreen),
  pressure: later(async () => (await import('./pressure/PressureScreen')).PressureScreen),
  listen: later(async () => (await import('./listen/ListenScreen')).ListenScreen),
  place: later(async () => (await import('./place/PlaceScreen')).PlaceScreen),
  mend: later(async () => (await import('./mend/MendScreen')).MendScreen),
  report: later(async () => (await import('./report/ReportScreen')).ReportScreen),
  secondear: later(async () => (await import('./secondear/SecondEarScreen')).SecondEarScreen),
  gate: later(async () => (await import('./secondear/BlindGate')).BlindGate),
  practice: later(async () => (await import('./practice/PracticeScreen')).PracticeScreen),
  help: later(async () => (await import('./help/HelpScreen')).HelpScreen),
}

const LineLater = () => createElement(SeenScreen, { of: LATER.line, isHidden: isBlind })
const PressureLater = () => createElement(SeenScreen, { of: LATER.pressure, isHidden: isBlind })
const ListenLater = () => createElement(SeenScreen, { of: LATER.listen, isHidden: isBlind })
const PlaceLater = () => createElement(SeenScreen, { of: LATER.place, isHidden: isBlind })
const MendLater = () => createElement(SeenScreen, { of: LATER.mend, isHidden: isBlind })
const ReportLater = () => createElement(SeenScreen, { of: LATER.report, isHidden: isAnyBlind })
const SecondEarLater = () => createElement(LaterScreen, { of: LATER.secondear })
const PracticeLater = () => createElement(LaterScreen, { of: LATER.practice })
const HelpLater = () => createElement(LaterScreen, { of: LATER.help })

/** Every screen; the bar and the page come from this list. */
export const SCREENS: { readonly [Name in ScreenName]: ScreenEntry } = {
  jobs: { words: 'label_jobs', icon: 'jobs', needsJob: false, Screen: JobsScreen },
  line: { words: 'label_line', icon: 'line', needsJob: true, Screen: LineLater },
  pressure: { words: 'label_pressure_screen', icon: 'pressure', needsJob: true, Screen: PressureLater },
  listen: { words: 'label_listen', icon: 'listen', needsJob: true, Screen: ListenLater },
  place: { words: 'label_place', icon: 'place', needsJob: true, Screen: PlaceLater },
  mend: { words: 'label_mend', icon: 'mend', needsJob: true, Screen: MendLater },
  report: { words: 'label_report', icon: 'report', needsJob: true, Screen: ReportLater },
  secondear: {
    words: 'label_second_ear',
    shortWords: 'label_second_ear_short',
    icon: 'ears',
    needsJob: true,
    Screen: SecondEarLater,
  },
  practice: { words: 'label_practice', icon: 'practice', needsJob: false, Screen: PracticeLater },
  help: { words: 'label_help', icon: 'help', needsJob: false, Screen: HelpLater },
}

/**
 * Fetches the screens that are not there yet, one after the other, so that no moment has to do with all of them. A failure
 * shows when the screen is gone to.
 */
export async function fetchScreens(): Promise<void> {
  for (const { fetch } of [
    LATER.place,
    LATER.line,
    LATER.listen,
    LATER.pressure,
    LATER.mend,
    LATER.report,
    LATER.secondear,
    LATER.practice,
    LATER.help,
  ]) {
    await nextTask()
    await fetch().catch(() => undefined)
  }
}

/** A screen in a chunk of its own. */
interface Later {
  readonly fetch: () => Promise<ComponentType>
  /** What to show: the screen itself once it was fetched, until then one that waits for it. */
  readonly present: () => ComponentType
}

function later(load: () => Promise<ComponentType>): Later {
  let fetched: ComponentType | null = null
  const fetch = async () => {
    fetched ??= await withWords(load)
    return fetched
  }
  const waiting = lazy(async () => ({ default: await fetch() }))
  return { fetch, present: () => fetched ?? waiting }
}

/** Screens that come later bring their words. */
async function withWords<Result>(load: () => Promise<Result>): Promise<Result> {
  const [loaded] = await Promise.all([load(), import('../../../shared/words/speakAll')])
  return loaded
}

/** Chosen once, when it is gone to: a page that waits for what is there already would stay blank for a moment. */
function LaterScreen({ of }: { readonly of: Later }) {
  const [Shown] = useState(() => of.present())
  return createElement(Shown)
}

interface SeenScreenProps {
  readonly of: Later
  /** Whether what it shows is not to be seen before somebody has listened. */
  readonly isHidden: (state: AppState) => boolean
}

/** A screen that shows the answer, or what came of it: somebody who is to listen blind gets the way to that instead. */
function SeenScreen({ of, isHidden }: SeenScreenProps) {
  const hidden = useAppState(isHidden)
  return createElement(LaterScreen, hidden ? { key: 'gate', of: LATER.gate } : { key: 'screen', of })
}
