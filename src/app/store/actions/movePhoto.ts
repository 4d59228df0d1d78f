import type { SketchPlace } from '../../../../shared/line/line'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Moves the photo under the sketch, which stays. */
export const movePhoto: Action<{ readonly lineId: string; readonly centre: SketchPlace }> = {
  name: 'movePhoto',
  words: 'do_move_photo',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, centre }) =>
    withLine(state, lineId, (line) => {
      const { site } = line
      return site?.photo ? { ...line, site: { ...site, photo: { ...site.photo, centre } } } : line
    }),
  mergeKey: ({ lineId }) => lineId,
}
