import { renumbered } from '../../../../shared/sketch/renumbered'
import type { Action } from '../action'
import { withPoints } from '../changes'

/** Numbers the points from 1 along the line. Only while there is no clip: a clip keeps the number it was taken at. */
export const renumberPoints: Action<{ readonly lineId: string }> = {
  name: 'renumberPoints',
  words: 'do_renumber_points',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId }) =>
    withPoints(state, lineId, (points, line) =>
      line.sweeps.some(({ clips }) => clips.length > 0) ? points : renumbered(points),
    ),
}
