import type { CautionStep } from '../../../../shared/job/cautions'
import type { Action } from '../action'

/** Hides the cautions of a step in this job, or shows them again. The report has them either way. */
export const hideCautions: Action<{ readonly step: CautionStep; readonly hidden: boolean }> = {
  name: 'hideCautions',
  words: 'do_hide_cautions',
  shortcut: null,
  scope: 'job',
  perform: (state, { step, hidden }) => {
    if (state.job === null) return state
    const others = (state.job.hiddenCautions ?? []).filter((each) => each !== step)
    return { ...state, job: { ...state.job, hiddenCautions: hidden ? [...others, step] : others } }
  },
}
