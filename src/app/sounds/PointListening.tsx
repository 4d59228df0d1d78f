import { useId } from 'react'
import { PASS_BAND_LIMITS, passBand } from '../../../shared/listen/passBand'
import { loopBetween } from '../../../shared/listen/playPosition'
import { formatNumber } from '../../../shared/words/formatQuantity'
import type { Listening, ListeningState } from '../ears/listening'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Choice } from '../look/widgets/Choice'
import { Notice } from '../look/widgets/Notice'
import { NumberField } from '../look/widgets/NumberField'
import { Switch } from '../look/widgets/Switch'
import type { PanelClip } from './panelClips'
import { clipWords } from './spectrumReading'

interface PointListeningProps {
  readonly clips: readonly PanelClip[]
  readonly chosen: PanelClip
  readonly listening: Listening<PanelClip>
  readonly state: ListeningState
}

/** What is heard and how. */
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

const VOLUMES_DB = { least: -18, most: 30, step: 3 } as const

function VolumeField({ listening, state }: PartProps) {
  const { say } = useSay()
  const id = useId()
  const words = say('label_volume_of', { volume: state.volumeDb })
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
  return (
    <Switch
      words={say('label_match')}
      on={state.matched}
      hint={say('match_hint')}
      onChange={(on) => listening.setMatched(on)}
    />
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
  const switchLoop = (on: boolean) => {
    const atS = listening.positionS()
    const fromS = atS > durationS - 1 ? Math.max(0, durationS - 1) : atS
    if (on) set(fromS, fromS + 1)
    else listening.setLoop(null)
  }
  return (
    <div className="listen-loop">
      <Switch words={say('label_loop')} on={loop !== null} onChange={switchLoop} />
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
