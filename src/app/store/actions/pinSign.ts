import type { Sign } from '../../../../shared/job/signs'
import type { Action } from '../action'
import { withSigns } from '../changes'

/** Pins what was seen or heard to its place. */
export const pinSign: Action<{ readonly lineId: string; readonly sign: Sign }> = {
  name: 'pinSign',
  words: 'do_pin_sign',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, sign }) => withSigns(state, lineId, (signs) => [...signs, sign]),
}
