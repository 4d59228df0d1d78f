import { type Mend, NO_MEND } from '../../../../shared/job/mend'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Changes what is told of the repair; letters typed into one field are one step of undo. */
export const changeMend: Action<{
  readonly lineId: string
  readonly change: Partial<Mend>
  /** What of it is typed at, as a step's id; nothing for what is done at once. */
  readonly typing?: string
}> = {
  name: 'changeMend',
  words: 'do_change_mend',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, change }) =>
    withLine(state, lineId, (line) => ({ ...line, mend: { ...(line.mend ?? NO_MEND), ...change } })),
  mergeKey: ({ lineId, change, typing }) => `${lineId} ${Object.keys(change).join(' ')} ${typing ?? ''}`,
}
