import { useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Notice } from '../../look/widgets/Notice'
import { useRecorder, useRecorderState } from './useRecorder'

/** Room for fewer clips than this is worth a word. Chosen: a line with air on and off. */
const FEW_CLIPS = 60

/** The deepest that a clip is kept at, and twice over: its chunks, and the file they become. */
const BYTES_A_SECOND = 2 * 48_000 * 4

/** What went wrong with the microphone or the room on the device. */
export function RecorderNotices() {
  const { say, sayKeyed } = useSay()
  const recorder = useRecorder()
  const trouble = useRecorderState((state) => state.trouble)
  const free = useRecorderState((state) => state.freeBytes)
  const lengthS = useAppState((state) => state.device.listen.lengthS)
  const readOnly = useAppState((state) => state.session.readOnly)
  const clips = free === null ? FEW_CLIPS : Math.floor(free / (BYTES_A_SECOND * lengthS))
  const isOfMicrophone = trouble?.key.startsWith('mic_') === true
  return (
    <>
      {readOnly && (
        <Notice severity="odd">
          <p>{say('listen_read_only')}</p>
        </Notice>
      )}
      {trouble !== null && (
        <Notice
          severity="wrong"
          actions={isOfMicrophone && <Button onClick={() => void recorder.open()}>{say('do_try_again')}</Button>}
        >
          <p>{sayKeyed(trouble)}</p>
        </Notice>
      )}
      {clips < FEW_CLIPS && (
        <Notice severity={clips < 2 ? 'wrong' : 'odd'}>
          <p>{sayKeyed({ key: 'room_low', values: { clips, length_s: lengthS } })}</p>
        </Notice>
      )}
    </>
  )
}
