import type { JobClip } from '../../../../shared/job/job'
import type { Action } from '../action'
import { withLine } from '../changes'
import { withClip } from './addRecordedClip'

export interface JoinClips {
  readonly lineId: string
  /** Name of the sweep they join; one that is not there is made. */
  readonly sweep: string
  /** Of the sweep, when it is made. */
  readonly sweepId: string
  readonly clips: readonly JobClip[]
}

/** Adds clips of a recorder to a sweep of a line. */
export const joinClips: Action<JoinClips> = {
  name: 'joinClips',
  words: 'do_join_clips',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, sweep, sweepId, clips }) =>
    clips.length === 0
      ? state
      : withLine(state, lineId, (line) => {
          const named = clips.map((clip) => ({ ...clip, row: { ...clip.row, sweep } }))
          return { ...line, sweeps: named.reduce((sweeps, clip) => withClip(sweeps, clip, sweepId), [...line.sweeps]) }
        }),
}
