import { useEffect, useMemo, useRef, useState } from 'react'
import type { StandingOut } from '../../../shared/evidence/bandsOverFloor'
import { PASS_BAND_LIMITS, type PassBand, passBand } from '../../../shared/listen/passBand'
import type { PowerDensity } from '../../../shared/spectrum/welch'
import type { ClipReading } from '../analysis/clipReader'
import { viewWith, zoomView } from '../charts/zoomView'
import { useSay } from '../frame/useSay'
import { Button } from '../look/widgets/Button'
import { Choice } from '../look/widgets/Choice'
import { keyMoves } from './keyMoves'
import { ListenIcon } from './ListenIcon'
import type { ShownClips } from './panelClips'
import { SpectrumCanvas } from './SpectrumCanvas'
import { SpectrumKey } from './SpectrumKey'
import { SpectrumTable } from './SpectrumTable'
import { spectrumLines } from './spectrumLines'
import { spectrumReading } from './spectrumReading'

export interface PointSpectrumProps {
  readonly point: number
  readonly clips: ShownClips
  readonly spectra: ReadonlyMap<string, ClipReading<PowerDensity>>
  readonly telling: readonly StandingOut[] | null
  readonly band: PassBand | null
  readonly onBand: (band: PassBand | null) => void
  readonly onSeen: ((point: number) => void) | undefined
}

/** One step of the arrow keys: a twelfth of an octave. */
const READ_STEP = 2 ** (1 / 12)

const ZOOM = 1.6

const NOTHING: readonly StandingOut[] = []

/** The spectrum of the point over that of its neighbours: to look at, to read, and to choose what is played. */
export function PointSpectrum(props: PointSpectrumProps) {
  const { point, clips, spectra, telling, band, onBand, onSeen } = props
  const { say, sayKeyed } = useSay()
  const [detail, setDetail] = useState<'fine' | 'thirds'>('fine')
  const [view, setView] = useState<PassBand>(PASS_BAND_LIMITS)
  const [cursorHz, setCursorHz] = useState<number | null>(null)
  const lines = useMemo(() => spectrumLines(clips, spectra, detail, view), [clips, spectra, detail, view])
  const frame = useRef<HTMLDivElement>(null)
  const own = clips.on ?? clips.off
  const ownReading = own === null ? undefined : spectra.get(own.id)
  const isThere = ownReading?.ok === true
  useSeen(frame, isThere, () => onSeen?.(point))

  const middleHz = cursorHz ?? Math.sqrt(view.lowHz * view.highHz)
  const zoom = (factor: number, aboutHz = middleHz) =>
    setView((before) => zoomView(before, { factor, aboutHz }, PASS_BAND_LIMITS))
  const read = (hz: number) => {
    const within = Math.min(PASS_BAND_LIMITS.highHz, Math.max(PASS_BAND_LIMITS.lowHz, hz))
    setCursorHz(within)
    setView((before) => viewWith(before, within, PASS_BAND_LIMITS))
  }
  const onKey = (event: React.KeyboardEvent) => {
    const step = event.shiftKey ? READ_STEP ** 4 : READ_STEP
    keyMoves(event, [
      ['ArrowRight ArrowUp', () => read(middleHz * step)],
      ['ArrowLeft ArrowDown', () => read(middleHz / step)],
      ['Home', () => read(PASS_BAND_LIMITS.lowHz)],
      ['End', () => read(PASS_BAND_LIMITS.highHz)],
      ['+ =', () => zoom(ZOOM)],
      ['-', () => zoom(1 / ZOOM)],
    ])
  }
  const reading = spectrumReading(lines, { cursorHz, detail, say })
  return (
    <section className="point-part" aria-label={say('heading_spectrum')}>
      <div className="point-head">
        <h3>{say('heading_spectrum')}</h3>
        <div className="row">
          <Button kind="bare" iconOnly icon={<ListenIcon name="zoomOut" />} onClick={() => zoom(1 / ZOOM)}>
            {say('do_spectrum_out')}
          </Button>
          <Button kind="bare" iconOnly icon={<ListenIcon name="zoomIn" />} onClick={() => zoom(ZOOM)}>
            {say('do_spectrum_in')}
          </Button>
        </div>
      </div>
      <SpectrumKey clips={clips} />
      <div ref={frame} className="spectrum-frame">
        {isThere ? (
          <div
            className="spectrum-read"
            role="slider"
            tabIndex={0}
            aria-label={say('label_read_value')}
            aria-valuemin={PASS_BAND_LIMITS.lowHz}
            aria-valuemax={PASS_BAND_LIMITS.highHz}
            aria-valuenow={Math.round(middleHz)}
            aria-valuetext={reading}
            onKeyDown={onKey}
          >
            <SpectrumCanvas
              lines={lines}
              telling={telling ?? NOTHING}
              band={band}
              view={view}
              cursorHz={cursorHz}
              stepped={detail === 'thirds'}
              levelsWords={say(detail === 'thirds' ? 'label_band_axis' : 'label_density_axis')}
              onRead={read}
              onBand={(aHz, bHz) => onBand(passBand(aHz, bHz))}
              onZoom={zoom}
            />
          </div>
        ) : (
          <p className="soft">{ownReading?.ok === false ? sayKeyed(ownReading.why) : say('spectrum_working')}</p>
        )}
      </div>
      <p className="point-reading">{reading}</p>
      {telling?.map(({ lowHz, highHz, overFloorDb }) => (
        <p key={lowHz}>{say('spectrum_stands_out', { low_hz: lowHz, high_hz: highHz, over_floor_db: overFloorDb })}</p>
      ))}
      {telling?.length === 0 && clips.on !== null && <p>{say('spectrum_nothing_out')}</p>}
      <p className="soft">{say('spectrum_hint')}</p>
      <Choice
        label={say('label_detail')}
        value={detail}
        options={[
          { value: 'fine', words: say('label_fine') },
          { value: 'thirds', words: say('label_thirds') },
        ]}
        onChange={setDetail}
      />
      <SpectrumTable clips={clips} />
    </section>
  )
}

/** How long it must have been in view, ms. */
const SEEN_MS = 1000

/** Calls back once it was drawn and at least half in view for a second. */
function useSeen(frame: React.RefObject<HTMLElement | null>, isThere: boolean, onSeen: () => void): void {
  const latest = useRef(onSeen)
  latest.current = onSeen
  useEffect(() => {
    if (!isThere || frame.current === null) return
    let timer = 0
    const observer = new IntersectionObserver(
      (entries) => {
        clearTimeout(timer)
        if (entries.at(-1)!.isIntersecting) timer = window.setTimeout(() => latest.current(), SEEN_MS)
      },
      { threshold: 0.5 },
    )
    observer.observe(frame.current)
    return () => {
      clearTimeout(timer)
      observer.disconnect()
    }
  }, [frame, isThere])
}
