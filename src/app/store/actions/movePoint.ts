import type { JobLine } from '../../../../shared/job/job'
import type { PlannedPoint } from '../../../../shared/job/plannedPoints'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Says that a point lies elsewhere. Clips that were taken at it go with it. */
export const movePoint: Action<{ readonly lineId: string; readonly point: PlannedPoint }> = {
  name: 'movePoint',
  words: 'do_move_point',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, point }) =>
    withLine(state, lineId, (line) => {
      const plannedPoints = line.plannedPoints?.map((each) => (each.point === point.point ? moved(each, point) : each))
      const sweeps = line.sweeps.map((sweep) => sweepMoved(sweep, point))
      const isSame =
        sweeps.every((sweep, i) => sweep === line.sweeps[i]) &&
        (plannedPoints?.every((each, i) => each === line.plannedPoints![i]) ?? true)
      // Sweeps that stayed are the same list: no answer is worked out anew for a point without clips.
      return isSame
        ? line
        : {
            ...line,
            sweeps: sweeps.every((sweep, i) => sweep === line.sweeps[i]) ? line.sweeps : sweeps,
            ...(plannedPoints && { plannedPoints }),
          }
    }),
  mergeKey: ({ lineId, point }) => `${lineId} ${point.point}`,
}

type Placed = Pick<PlannedPoint, 'alongM' | 'offsetM'>

function moved<Point extends Placed>(point: Point, { alongM, offsetM }: Placed): Point {
  return point.alongM === alongM && point.offsetM === offsetM ? point : { ...point, alongM, offsetM }
}

function sweepMoved(sweep: JobLine['sweeps'][number], point: PlannedPoint): JobLine['sweeps'][number] {
  const clips = sweep.clips.map((clip) => {
    if (clip.row.point !== point.point) return clip
    const row = moved(clip.row, point)
    return row === clip.row ? clip : { ...clip, row }
  })
  return clips.every((clip, i) => clip === sweep.clips[i]) ? sweep : { ...sweep, clips }
}
