import type { JobSweep } from '../../../../shared/job/job'
import { evenAlongM, evenLayout } from '../../../../shared/sweep/evenLayout'
import type { NumberedLayout } from '../../../../shared/sweep/rowsFromNames'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Where the points of a sweep lie that were placed by a spacing. Points that a tape placed stay where they are. */
export const changeSpacing: Action<{
  readonly lineId: string
  readonly sweepId: string
  readonly layout: NumberedLayout
}> = {
  name: 'changeSpacing',
  words: 'do_change_spacing',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, sweepId, layout }) =>
    withLine(state, lineId, (line) => {
      const sweeps = line.sweeps.map((sweep) => (sweep.id === sweepId ? laidOut(sweep, layout) : sweep))
      return sweeps.every((sweep, i) => sweep === line.sweeps[i]) ? line : { ...line, sweeps }
    }),
  mergeKey: ({ lineId, sweepId }) => `${lineId} ${sweepId}`,
}

function laidOut(sweep: JobSweep, { startM, spacingM }: NumberedLayout): JobSweep {
  const before = evenLayout(sweep.clips.map(({ row }) => row))
  if (before === null || (before.startM === startM && before.spacingM === spacingM)) return sweep
  const { firstPoint } = before
  const clips = sweep.clips.map((clip) => ({
    ...clip,
    row: { ...clip.row, alongM: evenAlongM({ startM, spacingM, firstPoint }, clip.row.point) },
  }))
  return { ...sweep, clips }
}
