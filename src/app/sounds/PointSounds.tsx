import { type ReactNode, useCallback, useEffect, useMemo, useRef } from 'react'
import type { StandingOut } from '../../../shared/evidence/bandsOverFloor'
import type { PowerDensity } from '../../../shared/spectrum/welch'
import { clipReaderOf } from '../analysis/clipReader'
import type { Listening } from '../ears/listening'
import { useApp } from '../frame/useApp'
import { PointListening } from './PointListening'
import { PointSpectrogram } from './PointSpectrogram'
import { PointSpectrum } from './PointSpectrum'
import type { PanelClip, ShownClips } from './panelClips'
import { Transport } from './Transport'
import { useListening } from './useListening'
import { useReadings } from './useReadings'
import './PointSounds.css'

export interface PointSoundsProps {
  readonly point: number
  readonly clips: ShownClips
  /** Bands that stand out; `null`: nothing is to be said of that. */
  readonly telling: readonly StandingOut[] | null
  /** Nothing is said of rings either: somebody is to hear for himself. */
  readonly isBlind?: boolean
  /** The spectrum of the point was drawn and in view for a second. */
  readonly onSpectrumSeen?: ((point: number) => void) | undefined
  /** A clip, of this point or of one beside it, has really sounded for a second; told once a clip. */
  readonly onPlayed?: ((clip: PanelClip) => void) | undefined
  /** More about the chosen clip, below everything else. */
  readonly children?: (clip: PanelClip, listening: Listening<PanelClip>) => ReactNode
}

/** Spectrum, spectrogram and sound of the clips of a point, to be looked at and heard against each other. */
export function PointSounds({
  point,
  clips,
  telling,
  onSpectrumSeen,
  onPlayed,
  isBlind = false,
  children,
}: PointSoundsProps) {
  const { analyst, database } = useApp()
  const reader = clipReaderOf(analyst, database)
  const frame = useRef<HTMLDivElement>(null)
  const played = useMemo(() => Object.values(clips).filter((clip) => clip !== null), [clips])
  const spectrumOf = useCallback((clip: PanelClip) => reader.spectrum(clip), [reader])
  const samplesOf = useCallback((clip: PanelClip) => reader.samples(clip), [reader])
  const spectra = useReadings(played, spectrumOf)
  const densities = useMemo(() => {
    const told = [...spectra].flatMap(([id, reading]) => (reading.ok ? [[id, reading.value] as const] : []))
    return new Map<string, PowerDensity>(told)
  }, [spectra])
  const { listening, state } = useListening({ clips: played, densities, samplesOf, onPlayed })
  useEffect(() => {
    // The others are read ahead, so that going over to them is immediate.
    if (state.playing) for (const clip of played) void samplesOf(clip).catch(() => undefined)
  }, [state.playing, played, samplesOf])
  useSpaceToPlay(frame, () => listening.toggle())
  const chosen = played.find(({ id }) => id === state.clipId) ?? null
  return (
    <div className="point-panel" ref={frame}>
      <div className="point-charts">
        <PointSpectrum
          point={point}
          clips={clips}
          spectra={spectra}
          telling={telling}
          band={state.band}
          onBand={(band) => listening.setBand(band)}
          onSeen={onSpectrumSeen}
        />
        {chosen !== null && (
          <PointSpectrogram clip={chosen} reader={reader} listening={listening} state={state} isBlind={isBlind} />
        )}
      </div>
      {chosen !== null && <Transport chosen={chosen} listening={listening} state={state} isBlind={isBlind} />}
      {chosen !== null && <PointListening clips={played} chosen={chosen} listening={listening} state={state} />}
      {chosen !== null && children?.(chosen, listening)}
    </div>
  )
}

/** Space plays and pauses wherever in the panel it means nothing else. */
function useSpaceToPlay(frame: React.RefObject<HTMLElement | null>, toggle: () => void): void {
  const latest = useRef(toggle)
  latest.current = toggle
  useEffect(() => {
    const target = frame.current
    const onKey = (event: KeyboardEvent) => {
      const isOther = (event.target as HTMLElement).closest('button, input:not([type=range]), select, summary, a')
      if (event.key !== ' ' || event.repeat || isOther) return
      event.preventDefault()
      latest.current()
    }
    target?.addEventListener('keydown', onKey)
    return () => target?.removeEventListener('keydown', onKey)
  }, [frame])
}
