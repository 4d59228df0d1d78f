import type { PlannedPoint } from '../../../../shared/job/plannedPoints'
import type { Action } from '../action'
import { withPoints } from '../changes'

/** Lays points along the line. Those that clips were taken at are where they were; others make room for the new ones. */
export const layPoints: Action<{ readonly lineId: string; readonly points: readonly PlannedPoint[] }> = {
  name: 'layPoints',
  words: 'do_lay_points',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, points }) => withPoints(state, lineId, () => points),
}
