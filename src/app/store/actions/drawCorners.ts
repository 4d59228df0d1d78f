import { heldInPlace } from '../../../../shared/line/heldInPlace'
import type { SketchPlace } from '../../../../shared/line/line'
import { linePath } from '../../../../shared/line/linePath'
import { lineWithCorners } from '../../../../shared/line/lineWithCorners'
import type { Action } from '../action'
import { withLine } from '../changes'

/**
 * Draws the line through other corners. Signs stay on their own spot of ground; points stay at their distance along, as
 * they were laid by tape.
 */
export const drawCorners: Action<{
  readonly lineId: string
  /** Two or more, no two neighbours in one place. */
  readonly corners: readonly SketchPlace[]
  /** For each corner before, its number now; `null` for one that is gone. Without it they keep their numbers. */
  readonly cornerOf?: readonly (number | null)[]
}> = {
  name: 'drawCorners',
  words: 'do_draw_line',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, corners, cornerOf }) =>
    withLine(state, lineId, (jobLine) => {
      const line = lineWithCorners(jobLine.line, corners, cornerOf)
      const [before, after] = [linePath(jobLine.line), linePath(line)]
      const { signs, site } = jobLine
      return {
        ...jobLine,
        line,
        ...(signs && { signs: signs.map((sign) => heldInPlace(sign, before, after)) }),
        ...(site && { site: site.startAt === null ? site : { ...site, startAt: null } }),
      }
    }),
  mergeKey: ({ lineId, corners }) => `${lineId} ${corners.length}`,
}
