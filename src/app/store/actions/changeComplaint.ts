import { type Complaint, NO_COMPLAINT } from '../../../../shared/job/complaint'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Complaint, what was ruled out, and how the line was shut off. */
export const changeComplaint: Action<{ readonly lineId: string; readonly change: Partial<Complaint> }> = {
  name: 'changeComplaint',
  words: 'do_change_complaint',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, change }) =>
    withLine(state, lineId, (line) => ({
      ...line,
      complaint: { ...(line.complaint ?? NO_COMPLAINT), ...change },
    })),
  mergeKey: ({ lineId, change }) => `${lineId} ${Object.keys(change).join(' ')}`,
}
