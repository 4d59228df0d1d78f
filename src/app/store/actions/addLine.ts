import type { JobLine } from '../../../../shared/job/job'
import type { Action } from '../action'

/** Puts another line into the open job. */
export const addLine: Action<JobLine> = {
  name: 'addLine',
  words: 'do_add_line',
  shortcut: null,
  scope: 'job',
  perform: (state, line) =>
    state.job === null ? state : { ...state, job: { ...state.job, lines: [...state.job.lines, line] } },
}
