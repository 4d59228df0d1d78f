import type { Action } from '../action'
import { withDevice } from '../changes'
import type { Device } from '../state'

/** Paper or its dark twin. */
export const changeLook: Action<Device['look']> = {
  name: 'changeLook',
  words: 'do_change_look',
  shortcut: null,
  scope: 'device',
  perform: (state, look) => withDevice(state, { look }),
}
