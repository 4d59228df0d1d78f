import { useCallback, useMemo, useRef } from 'react'
import { loopBetween } from '../../../shared/listen/playPosition'
import { ringStep } from '../../../shared/listen/ringStep'
import { formatNumber } from '../../../shared/words/formatQuantity'
import type { ClipReader } from '../analysis/clipReader'
import { PLOT } from '../charts/drawSpectrogram'
import type { Listening, ListeningState } from '../ears/listening'
import { useSay } from '../frame/useSay'
import { keyMoves } from './keyMoves'
import type { PanelClip } from './panelClips'
import { RingTable } from './RingTable'
import { SpectrogramCanvas } from './SpectrogramCanvas'
import { clipWords } from './spectrumReading'
import { timePointers } from './timePointers'
import { usePosition } from './useListening'
import { useReadings } from './useReadings'

interface PointSpectrogramProps {
  /** Nothing is said of rings. */
  readonly isBlind: boolean
  readonly clip: PanelClip
  readonly reader: ClipReader
  readonly listening: Listening<PanelClip>
  readonly state: ListeningState
}

/** One step of the arrow keys, s. */
const STEP_S = 0.1

/** The chosen clip over time, with its rings, and where in it one is. */
export function PointSpectrogram({ clip, reader, listening, state, isBlind }: PointSpectrogramProps) {
  const { say, sayKeyed } = useSay()
  const clips = useMemo(() => [clip], [clip])
  const read = useCallback((each: PanelClip) => reader.spectrogram(each), [reader])
  const reading = useReadings(clips, read).get(clip.id)
  const picture = reading?.ok ? reading.value : null
  const durationS = clip.evidence?.durationS ?? picture?.timesS.at(-1) ?? 0
  const rings = isBlind ? [] : (clip.evidence?.ringList ?? [])
  return (
    <section className="point-part" aria-label={say('heading_spectrogram')}>
      <h3>{say('heading_spectrogram')}</h3>
      <p className="soft">{say(isBlind ? 'spectrogram_of_blind' : 'spectrogram_of', { clip: clipWords(clip, say) })}</p>
      {picture === null || durationS <= 0 ? (
        <div className="spectrogram-frame">
          <p className="soft">{reading?.ok === false ? sayKeyed(reading.why) : say('spectrogram_working')}</p>
        </div>
      ) : (
        <div className="spectrogram-frame">
          <SpectrogramCanvas picture={picture} rings={rings} durationS={durationS} band={state.band} />
          <TimePlace clip={clip} durationS={durationS} listening={listening} state={state} />
        </div>
      )}
      <p className="soft">{say('spectrogram_hint')}</p>
      {!isBlind && <RingTable rings={rings} />}
    </section>
  )
}

interface TimePlaceProps {
  readonly clip: PanelClip
  readonly durationS: number
  readonly listening: Listening<PanelClip>
  readonly state: ListeningState
}

/** Lies over the picture: the cursor, the loop, and what fingers and keys do to them. */
function TimePlace({ clip, durationS, listening, state }: TimePlaceProps) {
  const { say } = useSay()
  const slider = useRef<HTMLDivElement>(null)
  const cursor = useRef<HTMLDivElement>(null)
  const whole = formatNumber(durationS, 1)
  usePosition(listening, state.playing, (atS) => {
    const share = Math.min(1, atS / durationS)
    if (cursor.current !== null) cursor.current.style.left = `${100 * share}%`
    const at = formatNumber(atS, 1)
    if (slider.current === null || slider.current.getAttribute('aria-valuenow') === at) return
    slider.current.setAttribute('aria-valuenow', at)
    slider.current.setAttribute('aria-valuetext', say('label_time_of', { at, whole }))
  })
  const pointers = useMemo(
    () =>
      timePointers({
        durationS,
        onSeek: (atS) => listening.seek(atS),
        onLoop: (aS, bS) => listening.setLoop(loopBetween(aS, bS, durationS)),
      }),
    [durationS, listening],
  )
  const ring = (direction: 'next' | 'previous') => {
    const to = ringStep(clip.evidence?.ringList ?? [], listening.positionS(), direction)
    if (to !== null) listening.seek(to.timeS)
  }
  const onKey = (event: React.KeyboardEvent) => {
    const seekBy = (stepS: number) => listening.seek(Math.min(durationS, Math.max(0, listening.positionS() + stepS)))
    const stepS = event.shiftKey ? 1 : STEP_S
    keyMoves(event, [
      ['ArrowRight ArrowUp', () => seekBy(stepS)],
      ['ArrowLeft ArrowDown', () => seekBy(-stepS)],
      ['Home', () => listening.seek(0)],
      ['End', () => listening.seek(durationS)],
      ['PageDown', () => ring('previous')],
      ['PageUp', () => ring('next')],
    ])
  }
  const inset = { left: PLOT.left, right: PLOT.right }
  return (
    <>
      <div
        ref={slider}
        className="spectrogram-place"
        style={{ ...inset, top: PLOT.top, bottom: PLOT.bottom }}
        role="slider"
        tabIndex={0}
        aria-label={say('label_place_in_clip')}
        aria-valuemin={0}
        aria-valuemax={Number(whole)}
        aria-valuenow={0}
        onKeyDown={onKey}
        {...pointers.place}
      >
        {state.loop !== null && (
          <div
            className="spectrogram-loop"
            style={{
              left: `${(100 * state.loop.fromS) / durationS}%`,
              right: `${100 - (100 * state.loop.toS) / durationS}%`,
            }}
          />
        )}
        <div ref={cursor} className="spectrogram-cursor" />
      </div>
      <div className="spectrogram-seconds" style={{ ...inset, height: PLOT.bottom }} {...pointers.seconds} />
    </>
  )
}
