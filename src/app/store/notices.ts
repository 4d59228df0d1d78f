import type { Keyed } from '../../../shared/words/sentence'
import { withSession } from './changes'
import type { AppState, Notice, NoticePlace } from './state'

/** Chosen: more than anybody reads. */
const MOST_NOTICES = 20

/** The state with something told at a place; what was told there in the same words, of the same file, before goes. */
export function tell(state: AppState, place: NoticePlace, severity: Notice['severity'], words: Keyed): AppState {
  const { notices } = state.session
  const id = notices.reduce((highest, notice) => Math.max(highest, notice.id), 0) + 1
  const others = notices.filter((notice) => notice.place !== place || !isSame(notice.words, words))
  return withSession(state, { notices: [...others, { id, place, severity, words }].slice(-MOST_NOTICES) })
}

function isSame(a: Keyed, b: Keyed): boolean {
  return a.key === b.key && a.values.file === b.values.file
}

/** The state with nothing told at a place any more. */
export function untell(state: AppState, place: NoticePlace): AppState {
  const notices = state.session.notices.filter((notice) => notice.place !== place)
  return notices.length === state.session.notices.length ? state : withSession(state, { notices })
}
