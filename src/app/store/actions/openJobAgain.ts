import { NO_MEND } from '../../../../shared/job/mend'
import type { Action } from '../action'
import { withLine } from '../changes'

/** A closed job is worked on again: its answer is what it is now. */
export const openJobAgain: Action<{ readonly lineId: string }> = {
  name: 'openJobAgain',
  words: 'do_open_job_again',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId }) =>
    withLine(state, lineId, ({ keptAnswer: _, ...line }) => ({
      ...line,
      mend: { ...(line.mend ?? NO_MEND), closedS: null },
    })),
}
