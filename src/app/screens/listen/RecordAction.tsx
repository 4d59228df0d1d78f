import type { RecordingState } from '../../../../shared/record/recordingState'
import { useAppState } from '../../frame/useApp'
import { type Say, useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { useRecorder, useRecorderState } from './useRecorder'

/** The one main action, in the thumb's reach: record, or end it. Above it, how long it still takes. */
export function RecordAction() {
  const { say } = useSay()
  const recorder = useRecorder()
  const phase = useRecorderState((state) => state.recording.phase)
  const slot = useRecorderState((state) => state.recording.slot)
  const readOnly = useAppState((state) => state.session.readOnly)
  if (phase === 'recording' || phase === 'settling') {
    return (
      <div className="page-action listen-action">
        <CountDown />
        <Button kind="decision" wide onClick={() => recorder.stop()}>
          {say(phase === 'settling' ? 'do_stop_settling' : 'do_stop_clip')}
        </Button>
      </div>
    )
  }
  const isWaiting = phase === 'opening' || phase === 'keeping'
  return (
    <div className="page-action listen-action">
      {isWaiting && <CountDown />}
      {slot !== null && (
        <Button kind="main" wide disabled={isWaiting || readOnly} onClick={() => void recorder.start()}>
          {say('do_record', { point: slot.point, air: say(slot.air === 'on' ? 'label_on' : 'label_off') })}
        </Button>
      )}
    </div>
  )
}

/** What is going on, in words and as a line that fills. */
function CountDown() {
  const { say } = useSay()
  const words = useRecorderState((state) => phaseWords(state.recording, say))
  const share = useRecorderState(({ recording }) =>
    recording.phase === 'recording' ? Math.min(1, recording.recordedS / recording.wantedS) : 0,
  )
  return (
    <div className="listen-count">
      <p role="timer" aria-live="off">
        {words}
      </p>
      <progress className="progress-bar" max={1} value={share} aria-label={words} />
    </div>
  )
}

function phaseWords({ phase, wantedS, recordedS }: RecordingState, say: Say): string {
  switch (phase) {
    case 'settling':
      return say('label_settling')
    case 'recording':
      return say('label_recording', { left: Math.max(0, Math.ceil(wantedS - recordedS)) })
    case 'keeping':
      return say('label_keeping')
    default:
      return say('label_opening')
  }
}
