import type { Action } from '../action'
import { withSite } from '../changes'

/** Says which bend corners snap to besides the right angle, degrees; null for none. */
export const changeSnap: Action<{ readonly lineId: string; readonly snapDeg: number | null }> = {
  name: 'changeSnap',
  words: 'do_change_snap',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, snapDeg }) => withSite(state, lineId, { snapDeg }),
  mergeKey: ({ lineId }) => lineId,
}
