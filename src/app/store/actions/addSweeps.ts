import type { JobSweep } from '../../../../shared/job/job'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Adds sweeps to a line, to be fitted together with those it has. Their names must be free there. */
export const addSweeps: Action<{ readonly lineId: string; readonly sweeps: readonly JobSweep[] }> = {
  name: 'addSweeps',
  words: 'do_add_sweep',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, sweeps }) =>
    withLine(state, lineId, (line) => ({ ...line, sweeps: [...line.sweeps, ...sweeps] })),
}
