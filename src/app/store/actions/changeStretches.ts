import type { Line } from '../../../../shared/line/line'
import type { Action } from '../action'
import { withLine } from '../changes'

/** What covers the line, stretch by stretch. */
export const changeStretches: Action<{ readonly lineId: string; readonly stretches: Line['stretches'] }> = {
  name: 'changeStretches',
  words: 'do_change_stretches',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, stretches }) =>
    withLine(state, lineId, (line) =>
      line.line.stretches === stretches ? line : { ...line, line: { ...line.line, stretches } },
    ),
  mergeKey: ({ lineId }) => lineId,
}
