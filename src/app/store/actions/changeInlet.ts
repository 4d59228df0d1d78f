import type { Line } from '../../../../shared/line/line'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Where air is let in, along the line; null when not told. */
export const changeInlet: Action<{ readonly lineId: string; readonly airInletM: Line['airInletM'] }> = {
  name: 'changeInlet',
  words: 'do_change_inlet',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, airInletM }) =>
    withLine(state, lineId, (line) =>
      line.line.airInletM === airInletM ? line : { ...line, line: { ...line.line, airInletM } },
    ),
  mergeKey: ({ lineId }) => lineId,
}
