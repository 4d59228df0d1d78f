import type { Action } from '../action'
import { withLine } from '../changes'

/** Turns the photo under the sketch about its middle; `turnDeg` clockwise, brought into -180 to 180. */
export const turnPhoto: Action<{ readonly lineId: string; readonly turnDeg: number }> = {
  name: 'turnPhoto',
  words: 'do_turn_photo',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, turnDeg }) =>
    withLine(state, lineId, (line) => {
      const { site } = line
      if (!site?.photo) return line
      const { turnDeg: _, ...photo } = site.photo
      const within = turnDeg - 360 * Math.ceil((turnDeg - 180) / 360)
      return { ...line, site: { ...site, photo: within === 0 ? photo : { ...photo, turnDeg: within } } }
    }),
  mergeKey: ({ lineId }) => lineId,
}
