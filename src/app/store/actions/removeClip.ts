import type { JobClip, JobLine } from '../../../../shared/job/job'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Takes a clip out of its sweep; it can be put back for as long as the job is kept. */
export const removeClip: Action<{ readonly lineId: string; readonly clip: JobClip }> = {
  name: 'removeClip',
  words: 'do_remove_clip',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, clip }) => withLine(state, lineId, (line) => without(line, clip)),
}

function without(line: JobLine, clip: JobClip): JobLine {
  if (!line.sweeps.some(({ clips }) => clips.includes(clip))) return line
  const sweeps = line.sweeps
    .map((sweep) =>
      sweep.clips.includes(clip) ? { ...sweep, clips: sweep.clips.filter((each) => each !== clip) } : sweep,
    )
    .filter(({ clips, name }) => clips.length > 0 || name !== clip.row.sweep)
  return { ...line, sweeps, removedClips: [...(line.removedClips ?? []), clip] }
}
