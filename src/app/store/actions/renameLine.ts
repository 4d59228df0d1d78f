import type { Action } from '../action'
import { withLine } from '../changes'

/** Calls a line something else. */
export const renameLine: Action<{ readonly lineId: string; readonly name: string }> = {
  name: 'renameLine',
  words: 'do_rename_line',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, name }) =>
    withLine(state, lineId, (line) => (line.name === name ? line : { ...line, name })),
  mergeKey: ({ lineId }) => lineId,
}
