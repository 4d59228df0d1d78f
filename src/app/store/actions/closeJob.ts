import type { KeptAnswer } from '../../../../shared/job/keptAnswer'
import { NO_MEND } from '../../../../shared/job/mend'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Closes the job of a line with the answer as it stands, so that its report is never worked out anew. */
export const closeJob: Action<{
  readonly lineId: string
  readonly closedS: number
  /** `null` where the line has no answer. */
  readonly keptAnswer: KeptAnswer | null
}> = {
  name: 'closeJob',
  words: 'do_close_job',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, closedS, keptAnswer }) =>
    withLine(state, lineId, ({ keptAnswer: _, ...line }) => ({
      ...line,
      mend: { ...(line.mend ?? NO_MEND), closedS },
      ...(keptAnswer && { keptAnswer }),
    })),
}
