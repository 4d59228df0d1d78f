import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { SelectField } from '../../look/widgets/SelectField'
import { changeListen } from '../../store/actions/changeListen'
import { useRecorder, useRecorderState } from './useRecorder'

/** Which microphone is listened to. Browsers tell their names only once one was opened. */
export function DeviceField({ disabled = false }: { readonly disabled?: boolean }) {
  const { say } = useSay()
  const { store } = useApp()
  const recorder = useRecorder()
  const wanted = useAppState((state) => state.device.listen.deviceId)
  const devices = useRecorderState((state) => state.devices)
  const isThere = devices.some(({ id }) => id === wanted)
  const options = [
    { value: '', words: say('label_microphone_any') },
    ...devices.map(({ id, name }, i) => ({
      value: id,
      words: name === '' ? say('label_microphone_number', { number: i + 1 }) : name,
    })),
  ]
  return (
    <SelectField
      label={say('label_microphone')}
      value={isThere && wanted !== null ? wanted : ''}
      options={options}
      disabled={disabled}
      onChange={(id) => {
        store.dispatch(changeListen, { deviceId: id === '' ? null : id })
        void recorder.reopen()
      }}
    />
  )
}
