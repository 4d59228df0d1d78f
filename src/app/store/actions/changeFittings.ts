import type { Line } from '../../../../shared/line/line'
import type { Action } from '../action'
import { withLine } from '../changes'

/** What the line is joined by. */
export const changeFittings: Action<{ readonly lineId: string; readonly fittings: Line['fittings'] }> = {
  name: 'changeFittings',
  words: 'do_change_fittings',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, fittings }) =>
    withLine(state, lineId, (line) =>
      line.line.fittings === fittings ? line : { ...line, line: { ...line.line, fittings } },
    ),
  mergeKey: ({ lineId }) => lineId,
}
