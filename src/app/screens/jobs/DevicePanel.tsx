import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Choice } from '../../look/widgets/Choice'
import { Panel } from '../../look/widgets/Panel'
import { changeLook } from '../../store/actions/changeLook'
import { changeUnits } from '../../store/actions/changeUnits'

/** Settings of this device, for all jobs. */
export function DevicePanel() {
  const { say, units } = useSay()
  const { store } = useApp()
  const look = useAppState((state) => state.device.look)
  return (
    <Panel heading={say('label_this_device')}>
      <Choice
        label={say('label_lengths')}
        value={units.length}
        options={[
          { value: 'm', words: say('label_metres') },
          { value: 'ft', words: say('label_feet') },
        ]}
        onChange={(length) => store.dispatch(changeUnits, { length, pressure: length === 'ft' ? 'psi' : 'kPa' })}
      />
      <Choice
        label={say('label_look')}
        value={look}
        options={[
          { value: 'auto', words: say('label_look_auto') },
          { value: 'light', words: say('label_look_light') },
          { value: 'dark', words: say('label_look_dark') },
        ]}
        onChange={(next) => store.dispatch(changeLook, next)}
      />
    </Panel>
  )
}
