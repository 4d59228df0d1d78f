import { useCallback, useEffect, useMemo, useState } from 'react'
import { bandsOverFloor } from '../../../../shared/evidence/bandsOverFloor'
import type { JobLine } from '../../../../shared/job/job'
import type { PowerDensity } from '../../../../shared/spectrum/welch'
import { clipReaderOf } from '../../analysis/clipReader'
import { useApp, useAppState } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { SelectField } from '../../look/widgets/SelectField'
import { PointListening } from './PointListening'
import { PointSpectrogram } from './PointSpectrogram'
import { PointSpectrum } from './PointSpectrum'
import { type PanelClip, panelClips } from './panelClips'
import { useListening } from './useListening'
import { useReadings } from './useReadings'
import './PointPanel.css'

export interface PointPanelProps {
  readonly line: JobLine
  readonly point: number
  /** The spectrum of the point was drawn and in view for a second. */
  readonly onSpectrumSeen?: ((point: number) => void) | undefined
  /** A clip, of this point or of one beside it, has really sounded for a second. */
  readonly onPlayed?: ((point: number, clip: PanelClip) => void) | undefined
}

/** Spectrum, spectrogram and sound of one point. */
export function PointPanel({ line, point, onSpectrumSeen, onPlayed }: PointPanelProps) {
  const { say } = useSay()
  const { analyst, database } = useApp()
  const heard = useAppState((state) => state.session.heard)
  const reader = clipReaderOf(analyst, database)
  const clips = useMemo(() => panelClips(line, heard, point), [line, heard, point])
  const settings = useMemo(() => settingsOf(clips.own), [clips])
  const [chosenSetting, chooseSetting] = useState<string | null>(null)
  const setting = settings.find(({ value }) => value === chosenSetting) ?? settings[0]
  const shown = useMemo(() => shownClips(setting?.clips ?? [], clips), [setting, clips])
  const played = useMemo(() => Object.values(shown).filter((clip) => clip !== null), [shown])

  const spectra = useReadings(
    played,
    useCallback((clip: PanelClip) => reader.spectrum(clip), [reader]),
  )
  const densities = useMemo(() => {
    const told = [...spectra].flatMap(([id, reading]) => (reading.ok ? [[id, reading.value] as const] : []))
    return new Map<string, PowerDensity>(told)
  }, [spectra])
  const telling = useMemo(() => tellingBands(clips), [clips])
  const samplesOf = useCallback((clip: PanelClip) => reader.samples(clip), [reader])
  const { listening, state } = useListening({ clips: played, densities, samplesOf, onPlayed })
  useEffect(() => {
    if (state.playing) for (const clip of played) void samplesOf(clip).catch(() => undefined) // so that A and B are there at once
  }, [state.playing, played, samplesOf])

  const chosen = played.find(({ id }) => id === state.clipId) ?? null
  if (chosen === null) return <p className="soft">{say('listen_silent')}</p>
  return (
    <div className="point-panel" onKeyDown={(event) => playOnSpace(event, () => listening.toggle())}>
      {settings.length > 1 && (
        <SelectField
          label={say('label_take')}
          value={setting!.value}
          options={settings.map(({ value, sweep, take }) => ({ value, words: say('label_take_of', { sweep, take }) }))}
          onChange={chooseSetting}
        />
      )}
      <div className="point-charts">
        <PointSpectrum
          point={point}
          clips={shown}
          spectra={spectra}
          telling={telling}
          band={state.band}
          onBand={(band) => listening.setBand(band)}
          onSeen={onSpectrumSeen}
        />
        <PointSpectrogram clip={chosen} reader={reader} listening={listening} state={state} />
      </div>
      <PointListening clips={played} chosen={chosen} listening={listening} state={state} />
    </div>
  )
}

export interface ShownClips {
  readonly on: PanelClip | null
  readonly off: PanelClip | null
  readonly before: PanelClip | null
  readonly after: PanelClip | null
}

interface Setting {
  readonly value: string
  readonly sweep: string
  readonly take: number
  readonly clips: readonly PanelClip[]
}

/** Clips of one sweep and take are looked at together. */
function settingsOf(own: readonly PanelClip[]): Setting[] {
  const found = new Map<string, Setting>()
  for (const clip of own) {
    if (clip.sha256 === null) continue
    const { sweep, take } = clip
    const value = JSON.stringify([sweep, take])
    found.set(value, { value, sweep, take, clips: [...(found.get(value)?.clips ?? []), clip] })
  }
  return [...found.values()]
}

function shownClips(own: readonly PanelClip[], { before, after }: ReturnType<typeof panelClips>): ShownClips {
  const withSound = (clip: PanelClip | null) => (clip?.sha256 == null ? null : clip)
  return {
    on: own.find(({ air }) => air === 'on') ?? null,
    off: own.find(({ air }) => air === 'off') ?? null,
    before: withSound(before),
    after: withSound(after),
  }
}

function tellingBands({ own, allOn }: ReturnType<typeof panelClips>) {
  const evidenceOf = (air: 'on' | 'off') =>
    own.flatMap((clip) => (clip.air === air && clip.usable && clip.evidence !== null ? [clip.evidence] : []))
  return bandsOverFloor(evidenceOf('on'), evidenceOf('off'), allOn)
}

/** Space plays and pauses wherever it means nothing else. */
function playOnSpace(event: React.KeyboardEvent, toggle: () => void): void {
  const target = event.target as HTMLElement
  if (event.key !== ' ' || target.closest('button, input:not([type=range]), select, summary, textarea, a')) return
  event.preventDefault()
  toggle()
}
