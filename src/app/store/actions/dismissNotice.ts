import type { Action } from '../action'
import { withSession } from '../changes'

/** Takes a message away. */
export const dismissNotice: Action<number> = {
  name: 'dismissNotice',
  words: 'do_dismiss',
  shortcut: null,
  scope: 'session',
  perform: (state, id) => withSession(state, { notices: state.session.notices.filter((notice) => notice.id !== id) }),
}
