import type { PlannedPoint } from '../../../../shared/job/plannedPoints'
import type { Action } from '../action'
import { withPoints } from '../changes'

/** Lays one more point. Its number must be free. */
export const addPoint: Action<{ readonly lineId: string; readonly point: PlannedPoint }> = {
  name: 'addPoint',
  words: 'do_add_point',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, point }) => withPoints(state, lineId, (points) => [...points, point]),
}
