import type { Action } from '../action'
import { withSigns } from '../changes'

/** Takes a sign off again. */
export const removeSign: Action<{ readonly lineId: string; readonly signId: string }> = {
  name: 'removeSign',
  words: 'do_remove_sign',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, signId }) => withSigns(state, lineId, (signs) => signs.filter(({ id }) => id !== signId)),
}
