import type { PressureTest } from '../../../../shared/job/pressureTests'
import type { Action } from '../action'
import { withLine } from '../changes'

/** Begins a pressure test. */
export const addPressureTest: Action<{ readonly lineId: string; readonly test: PressureTest }> = {
  name: 'addPressureTest',
  words: 'do_add_test',
  shortcut: null,
  scope: 'job',
  perform: (state, { lineId, test }) =>
    withLine(state, lineId, (line) => ({ ...line, pressureTests: [...(line.pressureTests ?? []), test] })),
}
