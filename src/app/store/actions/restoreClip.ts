import type { JobClip } from '../../../../shared/job/job'
import type { Action } from '../action'
import { withLine } from '../changes'
import { withClip } from './addRecordedClip'

/** Puts a clip that was taken out back into the sweep it was in. */
export const restoreClip: Action<{ readonly lineId: string; readonly clip: JobClip; readonly sweepId: string }> = {
  name: 'restoreClip',
  words: 'do_restore_clip',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, clip, sweepId }) =>
    withLine(state, lineId, (line) => {
      const removed = line.removedClips ?? []
      if (!removed.includes(clip)) return line
      const removedClips = removed.filter((each) => each !== clip)
      return { ...line, sweeps: withClip(line.sweeps, clip, sweepId), removedClips }
    }),
}
