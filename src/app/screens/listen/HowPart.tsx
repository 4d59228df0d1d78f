import type { ReactNode } from 'react'
import type { JobLine } from '../../../../shared/job/job'
import { freeSweepName } from '../../../../shared/record/recordInto'
import { isBusy } from '../../../../shared/record/recordingState'
import { LISTEN_WAYS } from '../../../../shared/record/slot'
import { CONTACTS } from '../../../../shared/sweep/sweep'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Choice } from '../../look/widgets/Choice'
import { NumberField } from '../../look/widgets/NumberField'
import { Panel } from '../../look/widgets/Panel'
import { SelectField } from '../../look/widgets/SelectField'
import { Switch } from '../../look/widgets/Switch'
import { canSpeak } from '../../record/speak'
import { changeListen } from '../../store/actions/changeListen'
import { CLIP_LENGTH_S } from '../../store/state'
import { DeviceField } from './DeviceField'
import { useRecorder, useRecorderState } from './useRecorder'

const LENGTHS_S = [6, 10, 20] as const
const WAYS = { on: 'label_way_on', both: 'label_way_both', passes: 'label_way_passes' } as const
const ON = {
  spike: 'label_contact_spike',
  plate: 'label_contact_plate',
  hand: 'label_contact_hand',
  other: 'label_contact_other',
} as const

/** How clips are recorded: length, air, microphone, by itself or by tap. */
export function HowPart({ line, aside }: { readonly line: JobLine; readonly aside: ReactNode }) {
  const { say } = useSay()
  const { store } = useApp()
  const recorder = useRecorder()
  const listen = useAppState((state) => state.device.listen)
  const busy = useRecorderState((state) => isBusy(state.recording.phase))
  const handsFree = useRecorderState((state) => state.recording.handsFree)
  const monitoring = useRecorderState((state) => state.monitoring)
  const isOpen = useRecorderState((state) => state.device !== null)
  const change = (next: Partial<typeof listen>) => store.dispatch(changeListen, next)
  return (
    <Panel heading={say('heading_how')}>
      <Switch
        words={say('label_hands_free')}
        hint={say('hands_free_hint')}
        on={handsFree}
        onChange={(on) => recorder.setHandsFree(on)}
      />
      {canSpeak() && <Switch words={say('label_speak')} on={listen.speak} onChange={(on) => change({ speak: on })} />}
      <Switch
        words={say('label_monitor')}
        hint={say('monitor_caution')}
        on={monitoring}
        disabled={!isOpen}
        onChange={(on) => void recorder.setMonitoring(on)}
      />
      <Choice
        label={say('label_length_of_clips')}
        value={LENGTHS_S.some((seconds) => seconds === listen.lengthS) ? String(listen.lengthS) : null}
        options={LENGTHS_S.map((seconds) => ({ value: String(seconds), words: say('label_seconds', { seconds }) }))}
        disabled={busy}
        onChange={(seconds) => change({ lengthS: Number(seconds) })}
      />
      <NumberField
        label={say('label_other_length')}
        value={listen.lengthS}
        unit="s"
        least={CLIP_LENGTH_S.least}
        most={CLIP_LENGTH_S.most}
        disabled={busy}
        onChange={(lengthS) => lengthS !== null && change({ lengthS })}
      />
      <Choice
        label={say('label_way')}
        value={listen.way}
        options={LISTEN_WAYS.map((way) => ({ value: way, words: say(WAYS[way]) }))}
        disabled={busy}
        onChange={(way) => change({ way })}
      />
      <p className="soft">{say('way_both_hint')}</p>
      <p className="soft">{say('record_first')}</p>
      <Choice
        label={say('label_contact')}
        value={listen.contact}
        options={CONTACTS.map((contact) => ({ value: contact, words: say(ON[contact]) }))}
        disabled={busy}
        onChange={(contact) => change({ contact })}
      />
      <SweepField line={line} disabled={busy} />
      <DeviceField disabled={busy} />
      <div className="row">{aside}</div>
    </Panel>
  )
}

function SweepField({ line, disabled }: { readonly line: JobLine; readonly disabled: boolean }) {
  const { say } = useSay()
  const recorder = useRecorder()
  useRecorderState((state) => state.sweep)
  const name = recorder.sweepName(line)
  const fresh = freeSweepName(line.sweeps, line.removedClips)
  const options = [
    ...line.sweeps.map((sweep) => ({ value: sweep.name, words: say('label_sweep_go_on', { name: sweep.name }) })),
    { value: fresh, words: say('label_sweep_new', { name: fresh }) },
  ]
  return (
    <>
      <SelectField
        label={say('label_record_into')}
        value={name}
        options={options}
        disabled={disabled}
        onChange={(next) => recorder.chooseSweep(next)}
      />
      <p className="soft">{say('sweep_hint')}</p>
    </>
  )
}
