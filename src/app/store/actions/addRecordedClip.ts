import type { JobClip, JobSweep } from '../../../../shared/job/job'
import type { Action } from '../action'
import { withLine } from '../changes'

export interface AddRecordedClip {
  readonly lineId: string
  readonly clip: JobClip
  /** Of the sweep, when the clip is the first of it. */
  readonly sweepId: string
}

/** Adds a clip that was recorded here to the sweep that its row names, and makes that sweep when there is none. */
export const addRecordedClip: Action<AddRecordedClip> = {
  name: 'addRecordedClip',
  words: 'do_add_recorded_clip',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, clip, sweepId }) =>
    withLine(state, lineId, (line) => ({ ...line, sweeps: withClip(line.sweeps, clip, sweepId) })),
}

/** The sweeps with one clip more. */
export function withClip(sweeps: readonly JobSweep[], clip: JobClip, sweepId: string): JobSweep[] {
  const isThere = sweeps.some(({ name }) => name === clip.row.sweep)
  if (!isThere) return [...sweeps, { id: sweepId, name: clip.row.sweep, clips: [clip], problems: [] }]
  return sweeps.map((sweep) => (sweep.name === clip.row.sweep ? { ...sweep, clips: [...sweep.clips, clip] } : sweep))
}
