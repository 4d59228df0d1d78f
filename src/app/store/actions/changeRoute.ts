import type { Line } from '../../../../shared/line/line'
import type { Action } from '../action'
import { withLine } from '../changes'

/** How sure the route is; null when not told. */
export const changeRoute: Action<{ readonly lineId: string; readonly routeSdM: Line['routeSdM'] }> = {
  name: 'changeRoute',
  words: 'do_change_route',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, routeSdM }) =>
    withLine(state, lineId, (line) =>
      line.line.routeSdM === routeSdM ? line : { ...line, line: { ...line.line, routeSdM } },
    ),
  mergeKey: ({ lineId }) => lineId,
}
