import type { Action } from '../action'
import { withPoints } from '../changes'

/** Takes a point away that was laid. Clips that were taken at its number stay. */
export const removePoint: Action<{ readonly lineId: string; readonly point: number }> = {
  name: 'removePoint',
  words: 'do_remove_point',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, point }) =>
    withPoints(state, lineId, (points) => points.filter((each) => each.point !== point)),
}
