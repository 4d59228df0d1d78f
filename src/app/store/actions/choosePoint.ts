import type { Action } from '../action'
import { withSession } from '../changes'

/** Looks at one point closer; null at none. */
export const choosePoint: Action<number | null> = {
  name: 'choosePoint',
  words: 'do_choose_point',
  shortcut: null,
  scope: 'session',
  perform: (state, chosenPoint) =>
    state.session.chosenPoint === chosenPoint ? state : withSession(state, { chosenPoint }),
}
