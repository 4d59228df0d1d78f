import type { Confirmation } from '../../../../shared/job/job'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Keeps what a person said of the place after looking and listening. */
export const confirmPlace: Action<{ readonly lineId: string; readonly said: Confirmation }> = {
  name: 'confirmPlace',
  words: 'do_confirm_place',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, said }) =>
    withLine(state, lineId, (line) => ({ ...line, confirmations: [...line.confirmations, said] })),
}
