import type { Action } from '../action'

/** Takes a line and its sweeps out of the open job; the sounds stay until undo cannot bring them back. */
export const removeLine: Action<string> = {
  name: 'removeLine',
  words: 'do_remove_line',
  shortcut: null,
  scope: 'job',
  perform: (state, lineId) => {
    if (state.job === null || !state.job.lines.some((line) => line.id === lineId)) return state
    return { ...state, job: { ...state.job, lines: state.job.lines.filter((line) => line.id !== lineId) } }
  },
}
