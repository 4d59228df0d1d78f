import type { Action } from '../action'
import { withLine } from '../changes'

/** Takes back what was told of a finding. */
export const removeFound: Action<{ readonly lineId: string; readonly foundId: string }> = {
  name: 'removeFound',
  words: 'do_remove_found',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, foundId }) =>
    withLine(state, lineId, (line) => ({ ...line, found: (line.found ?? []).filter(({ id }) => id !== foundId) })),
}
