import type { SketchPlace } from '../../../../shared/line/line'
import { scaledLine, scaledPlace } from '../../../../shared/sketch/scaledLine'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Sets the scale of the photo by a distance on it, and of what was drawn over it if that is wanted. */
export const scalePhoto: Action<{
  readonly lineId: string
  /** Old scale to new. */
  readonly factor: number
  /** What stays where it is. */
  readonly about: SketchPlace
  readonly alsoLine: boolean
}> = {
  name: 'scalePhoto',
  words: 'do_scale_photo',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, factor, about, alsoLine }) =>
    withLine(state, lineId, (before) => {
      const line = alsoLine ? scaledLine(before, factor, about) : before
      const { site } = line
      if (!site?.photo) return before
      const centre = scaledPlace(site.photo.centre, factor, about)
      const photo = { ...site.photo, mPerPx: site.photo.mPerPx * factor, scaleTold: true, centre }
      return { ...line, site: { ...site, photo } }
    }),
}
