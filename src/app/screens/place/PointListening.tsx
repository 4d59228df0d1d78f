import { useId, useRef } from 'react'
import { PASS_BAND_LIMITS, passBand } from '../../../../shared/listen/passBand'
import { loopBetween } from '../../../../shared/listen/playPosition'
import { ringStep } from '../../../../shared/listen/ringStep'
import { formatNumber } from '../../../../shared/words/formatQuantity'
import type { Listening, ListeningState } from '../../ears/listening'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { Choice } from '../../look/widgets/Choice'
import { Notice } from '../../look/widgets/Notice'
import { NumberField } from '../../look/widgets/NumberField'
import { ListenIcon } from './ListenIcon'
import type { PanelClip } from './panelClips'
import { clipWords } from './spectrumReading'
import { usePosition } from './useListening'

interface PointListeningProps {
  readonly clips: readonly PanelClip[]
  readonly chosen: PanelClip
  readonly listening: Listening<PanelClip>
  readonly state: ListeningState
}

/** What is heard and how. The play button stays in reach while the pictures are looked at. */
export function PointListening({ clips, chosen, listening, state }: PointListeningProps) {
  const { say, sayKeyed } = useSay()
  return (
    <section className="point-part" aria-label={say('heading_listening')}>
      <h3>{say('heading_listening')}</h3>
      <Choice
        label={say('label_hear')}
        value={chosen.id}
        options={clips.map((clip) => ({ value: clip.id, words: clipWords(clip, say) }))}
        onChange={(id) => listening.choose(id)}
      />
      {state.trouble !== null && (
        <Notice severity="wrong">
          <p>{sayKeyed(state.trouble)}</p>
        </Notice>
      )}
      <Transport chosen={chosen} listening={listening} state={state} />
      <p className="listen-caution">{say('listen_caution')}</p>
      <div className="listen-settings">
        <VolumeField listening={listening} state={state} />
        <MatchCheck listening={listening} state={state} />
        <PassBandFields listening={listening} state={state} />
        <LoopFields chosen={chosen} listening={listening} state={state} />
      </div>
    </section>
  )
}

type PartProps = Omit<PointListeningProps, 'clips' | 'chosen'>

function Transport({ chosen, listening, state }: PartProps & { readonly chosen: PanelClip }) {
  const { say } = useSay()
  const rings = chosen.evidence?.ringList ?? []
  const jump = (direction: 'next' | 'previous') => {
    const to = ringStep(rings, listening.positionS(), direction)
    if (to !== null) listening.seek(Math.max(0, to.timeS - LEAD_S))
  }
  return (
    <div className="transport">
      <Button
        kind="bare"
        iconOnly
        icon={<ListenIcon name="ringPrevious" />}
        disabled={rings.length === 0}
        onClick={() => jump('previous')}
      >
        {say('do_ring_previous')}
      </Button>
      <Button
        kind="main"
        icon={<ListenIcon name={state.playing ? 'pause' : 'play'} />}
        onClick={() => listening.toggle()}
      >
        {state.playing ? say('do_pause') : say('do_play')}
      </Button>
      <Button
        kind="bare"
        iconOnly
        icon={<ListenIcon name="ringNext" />}
        disabled={rings.length === 0}
        onClick={() => jump('next')}
      >
        {say('do_ring_next')}
      </Button>
      <TransportNote chosen={chosen} listening={listening} state={state} />
    </div>
  )
}

/** A ring is heard better with a moment before it, s. */
const LEAD_S = 0.03

function TransportNote({ chosen, listening, state }: PartProps & { readonly chosen: PanelClip }) {
  const { say } = useSay()
  const time = useRef<HTMLSpanElement>(null)
  const whole = chosen.evidence === null ? null : formatNumber(chosen.evidence.durationS, 1)
  usePosition(listening, state.playing, (atS) => {
    const words = whole === null ? '' : say('label_time_of', { at: formatNumber(atS, 1), whole })
    if (time.current !== null && time.current.textContent !== words) time.current.textContent = words
  })
  const liftDb = listening.liftDb()
  return (
    <p className="transport-note">
      <span>{clipWords(chosen, say)}</span>
      <span ref={time} className="soft" />
      {liftDb >= 0.5 && <span className="soft">{say('label_lifted', { lift_db: liftDb })}</span>}
    </p>
  )
}

const VOLUMES_DB = { least: -18, most: 30, step: 3 } as const

function VolumeField({ listening, state }: PartProps) {
  const { say } = useSay()
  const id = useId()
  const words = say('label_volume_of', { volume_db: state.volumeDb })
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {say('label_volume')}
      </label>
      <div className="listen-slider">
        <input
          id={id}
          type="range"
          min={VOLUMES_DB.least}
          max={VOLUMES_DB.most}
          step={VOLUMES_DB.step}
          value={state.volumeDb}
          aria-valuetext={words}
          onChange={(event) => listening.setVolumeDb(Number(event.target.value))}
        />
        <span>{words}</span>
      </div>
    </div>
  )
}

function MatchCheck({ listening, state }: PartProps) {
  const { say } = useSay()
  const id = useId()
  return (
    <div>
      <label className="listen-check">
        <input
          type="checkbox"
          checked={state.matched}
          aria-describedby={id}
          onChange={(event) => listening.setMatched(event.target.checked)}
        />
        {say('label_match')}
      </label>
      <p id={id} className="soft">
        {say('match_hint')}
      </p>
    </div>
  )
}

function PassBandFields({ listening, state }: PartProps) {
  const { say } = useSay()
  const { lowHz, highHz } = state.band ?? PASS_BAND_LIMITS
  return (
    <div className="listen-pair">
      <NumberField
        label={say('label_pass_low')}
        value={Math.round(lowHz)}
        unit="Hz"
        least={PASS_BAND_LIMITS.lowHz}
        most={PASS_BAND_LIMITS.highHz}
        onChange={(hz) => hz !== null && hz < highHz && listening.setBand(passBand(hz, highHz))}
      />
      <NumberField
        label={say('label_pass_high')}
        value={Math.round(highHz)}
        unit="Hz"
        least={PASS_BAND_LIMITS.lowHz}
        most={PASS_BAND_LIMITS.highHz}
        onChange={(hz) => hz !== null && hz > lowHz && listening.setBand(passBand(lowHz, hz))}
      />
      <Button disabled={state.band === null} onClick={() => listening.setBand(null)}>
        {say('do_play_all')}
      </Button>
    </div>
  )
}

function LoopFields({ chosen, listening, state }: PartProps & { readonly chosen: PanelClip }) {
  const { say } = useSay()
  const durationS = chosen.evidence?.durationS ?? 0
  if (durationS <= 0) return null
  const { loop } = state
  const set = (aS: number, bS: number) => listening.setLoop(loopBetween(aS, bS, durationS))
  return (
    <div className="listen-loop">
      <label className="listen-check">
        <input
          type="checkbox"
          checked={loop !== null}
          onChange={(event) => {
            const atS = listening.positionS()
            const fromS = atS > durationS - 1 ? Math.max(0, durationS - 1) : atS
            if (event.target.checked) set(fromS, fromS + 1)
            else listening.setLoop(null)
          }}
        />
        {say('label_loop')}
      </label>
      {loop !== null && (
        <>
          <LoopEnd
            label={say('label_loop_from')}
            atS={loop.fromS}
            durationS={durationS}
            onChange={(s) => set(Math.min(s, loop.toS), loop.toS)}
          />
          <LoopEnd
            label={say('label_loop_to')}
            atS={loop.toS}
            durationS={durationS}
            onChange={(s) => set(loop.fromS, Math.max(s, loop.fromS))}
          />
        </>
      )}
    </div>
  )
}

interface LoopEndProps {
  readonly label: string
  readonly atS: number
  readonly durationS: number
  readonly onChange: (atS: number) => void
}

function LoopEnd({ label, atS, durationS, onChange }: LoopEndProps) {
  const id = useId()
  const words = `${formatNumber(atS, 1)} s`
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <div className="listen-slider">
        <input
          id={id}
          type="range"
          min={0}
          max={durationS}
          step={0.1}
          value={atS}
          aria-valuetext={words}
          onChange={(event) => onChange(Number(event.target.value))}
        />
        <span>{words}</span>
      </div>
    </div>
  )
}
