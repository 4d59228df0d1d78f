import type { Sign } from '../../../../shared/job/signs'
import type { Action } from '../action'
import { withSigns } from '../changes'

/** Says otherwise what a sign is, where it is, or what is to be noted of it. */
export const changeSign: Action<{ readonly lineId: string; readonly sign: Sign }> = {
  name: 'changeSign',
  words: 'do_change_sign',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, sign }) =>
    withSigns(state, lineId, (signs) => signs.map((each) => (each.id === sign.id ? sign : each))),
  mergeKey: ({ lineId, sign }) => `${lineId} ${sign.id}`,
}
