import type { ShownUnits } from '../../../../shared/words/shownUnits'
import type { Action } from '../action'
import { withDevice } from '../changes'

/** Shows lengths in metres or feet. Files and the core keep to metres. */
export const changeUnits: Action<ShownUnits> = {
  name: 'changeUnits',
  words: 'do_change_units',
  shortcut: null,
  scope: 'device',
  perform: (state, units) => withDevice(state, { units }),
}
