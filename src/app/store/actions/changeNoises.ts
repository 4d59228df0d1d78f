import type { Line } from '../../../../shared/line/line'
import type { Action } from '../action'
import { withLine } from '../changes'

/** What else makes noise on the line. */
export const changeNoises: Action<{ readonly lineId: string; readonly noises: Line['noises'] }> = {
  name: 'changeNoises',
  words: 'do_change_noises',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, noises }) =>
    withLine(state, lineId, (line) =>
      line.line.noises === noises ? line : { ...line, line: { ...line.line, noises } },
    ),
  mergeKey: ({ lineId }) => lineId,
}
