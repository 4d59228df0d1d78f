import { type Digging, NO_DIGGING } from '../../../../shared/job/digging'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Changes what is planned of opening the ground; letters typed into one field are one step of undo. */
export const changeDigging: Action<{
  readonly lineId: string
  readonly change: Partial<Digging>
  /** What of it is typed at or pulled; nothing for what is done at once. */
  readonly typing?: string
}> = {
  name: 'changeDigging',
  words: 'do_change_digging',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, change }) =>
    withLine(state, lineId, (line) => ({ ...line, digging: { ...(line.digging ?? NO_DIGGING), ...change } })),
  mergeKey: ({ lineId, change, typing }) => `${lineId} ${Object.keys(change).join(' ')} ${typing ?? ''}`,
}
