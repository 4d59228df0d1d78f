import type { SketchPlace } from '../../../../shared/line/line'
import type { Action } from '../action'
import { withSite } from '../changes'

/** Says where the line begins, before it has a leg. */
export const placeStart: Action<{ readonly lineId: string; readonly startAt: SketchPlace }> = {
  name: 'placeStart',
  words: 'do_place_start',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, startAt }) => withSite(state, lineId, { startAt }),
  mergeKey: ({ lineId }) => lineId,
}
