import type { Found } from '../../../../shared/job/found'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Keeps what was found at a place of the line. */
export const addFound: Action<{ readonly lineId: string; readonly found: Found }> = {
  name: 'addFound',
  words: 'do_keep_found',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, found }) =>
    withLine(state, lineId, (line) => ({ ...line, found: [...(line.found ?? []), found] })),
}
