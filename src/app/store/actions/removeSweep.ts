import type { Action } from '../action'
import { withLine } from '../changes'

/** Takes a sweep off a line. */
export const removeSweep: Action<{ readonly lineId: string; readonly sweepId: string }> = {
  name: 'removeSweep',
  words: 'do_remove_sweep',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, sweepId }) =>
    withLine(state, lineId, (line) =>
      line.sweeps.some((sweep) => sweep.id === sweepId)
        ? { ...line, sweeps: line.sweeps.filter((sweep) => sweep.id !== sweepId) }
        : line,
    ),
}
