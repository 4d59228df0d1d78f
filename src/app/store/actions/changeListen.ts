import type { Action } from '../action'
import { withDevice } from '../changes'
import type { ListenSettings } from '../state'

/** Changes how clips are recorded on this device. */
export const changeListen: Action<Partial<ListenSettings>> = {
  name: 'changeListen',
  words: 'do_change_listen',
  shortcut: null,
  scope: 'device',
  perform: (state, change) => withDevice(state, { listen: { ...state.device.listen, ...change } }),
}
