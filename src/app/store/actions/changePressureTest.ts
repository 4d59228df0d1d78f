import type { PressureTest } from '../../../../shared/job/pressureTests'
import type { Action } from '../action'
import { withPressureTest } from '../changes'

/** Changes what is told of a pressure test; letters typed into one field are one step of undo. */
export const changePressureTest: Action<{
  readonly lineId: string
  readonly testId: string
  readonly change: Partial<Omit<PressureTest, 'id'>>
}> = {
  name: 'changePressureTest',
  words: 'do_change_test',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, testId, change }) =>
    withPressureTest(state, { lineId, testId }, (test) => ({ ...test, ...change })),
  mergeKey: ({ testId, change }) => `${testId} ${Object.keys(change).join(' ')}`,
}
