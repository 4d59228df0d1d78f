import { type Leg, lineWithLegs } from '../../../../shared/line/lineLegs'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Lengths and bends of the line. */
export const changeLegs: Action<{ readonly lineId: string; readonly legs: readonly Leg[] }> = {
  name: 'changeLegs',
  words: 'do_change_legs',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, legs }) =>
    withLine(state, lineId, (line) => ({ ...line, line: lineWithLegs(line.line, legs) })),
  mergeKey: ({ lineId, legs }) => `${lineId} ${legs.length}`,
}
