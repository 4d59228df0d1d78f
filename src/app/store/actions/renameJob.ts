import type { Action } from '../action'

/** Calls the open job something else. */
export const renameJob: Action<string> = {
  name: 'renameJob',
  words: 'do_rename_job',
  shortcut: null,
  scope: 'job',
  perform: (state, name) =>
    state.job === null || state.job.name === name ? state : { ...state, job: { ...state.job, name } },
  mergeKey: () => '',
}
