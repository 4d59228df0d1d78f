import type { JobLine } from '../../../../shared/job/job'
import { isBusy, type RecordingState } from '../../../../shared/record/recordingState'
import type { Slot } from '../../../../shared/record/slot'
import { pointsOnLine } from '../../../../shared/sketch/pointsOnLine'
import { useAppState } from '../../frame/useApp'
import { type Say, useSay } from '../../frame/useSay'
import { Choice } from '../../look/widgets/Choice'
import { Panel } from '../../look/widgets/Panel'
import { Peg } from '../../look/widgets/Peg'
import { useRecorder, useRecorderState } from './useRecorder'

/** Where to set the microphone down, and with the air on or off. */
export function NextClipPart({ line }: { readonly line: JobLine }) {
  const { say } = useSay()
  const recorder = useRecorder()
  const slot = useRecorderState((state) => state.recording.slot)
  const busy = useRecorderState((state) => isBusy(state.recording.phase))
  const readOnly = useAppState((state) => state.session.readOnly)
  if (slot === null) {
    return (
      <Panel heading={say('heading_next_clip')}>
        <p>{pointsOnLine(line).length === 0 ? say('record_no_points') : say('record_none_left')}</p>
      </Panel>
    )
  }
  return (
    <Panel heading={say('heading_next_clip')} headingUnseen>
      <div className="listen-next">
        <Peg point={slot.point} />
        <div>
          <p className="listen-where">{whereOf(slot, say)}</p>
          {slot.take > 1 && <p className="soft">{say('label_take_number', { take: slot.take })}</p>}
        </div>
      </div>
      <p aria-live="polite">
        <WhatToDo slot={slot} />
      </p>
      <Choice
        label={say('label_air')}
        labelUnseen
        value={slot.air}
        options={[
          { value: 'on', words: say('label_air_on') },
          { value: 'off', words: say('label_air_off') },
        ]}
        disabled={busy || readOnly}
        onChange={(air) => recorder.chooseAir(air)}
      />
    </Panel>
  )
}

function WhatToDo({ slot }: { readonly slot: Slot }) {
  const { say } = useSay()
  const waitS = useRecorderState((state) => waitOf(state.recording))
  if (slot.isReference) return say('record_reference')
  if (slot.staysPut) return waitS > 0 ? say('record_staying_wait', { wait_s: waitS }) : say('record_staying')
  return say(slot.air === 'on' ? 'record_turn_on' : 'record_turn_off')
}

/** Whole seconds until hands-free may begin. */
function waitOf({ handsFree, phase, notBeforeS, nowS }: RecordingState): number {
  return handsFree && phase === 'open' ? Math.max(0, Math.ceil(notBeforeS - nowS)) : 0
}

function whereOf({ point, alongM, offsetM }: Slot, say: Say): string {
  const values = { point, along_m: alongM, off_m: Math.abs(offsetM) }
  if (offsetM === 0) return say('label_point_at', values)
  return say(offsetM > 0 ? 'label_point_beside_left' : 'label_point_beside_right', values)
}
