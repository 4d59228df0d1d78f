import type { Line } from '../../../../shared/line/line'
import type { Action } from '../action'
import { withLine } from '../changes'

/** How deep the line lies where no stretch says otherwise; null when not told. */
export const changeDepth: Action<{ readonly lineId: string; readonly depthM: Line['depthM'] }> = {
  name: 'changeDepth',
  words: 'do_change_depth',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, depthM }) =>
    withLine(state, lineId, (line) =>
      line.line.depthM === depthM ? line : { ...line, line: { ...line.line, depthM } },
    ),
  mergeKey: ({ lineId }) => lineId,
}
