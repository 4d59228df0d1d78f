import { useEffect, useMemo, useState } from 'react'
import { PASS_BAND_LIMITS } from '../../../../shared/listen/passBand'
import type { QuestionClip } from '../../../../shared/practice/drills/question'
import { thinSpectrum } from '../../../../shared/spectrum/thinSpectrum'
import type { PowerDensity } from '../../../../shared/spectrum/welch'
import type { PlainSamples, SpectrogramPicture } from '../../../worker/protocol'
import { SPECTROGRAM, SPECTRUM_SEGMENT_S } from '../../analysis/clipReader'
import { useApp } from '../../frame/useApp'
import { useSay } from '../../frame/useSay'
import { Button } from '../../look/widgets/Button'
import { ListenIcon } from '../../sounds/ListenIcon'
import { RingTable } from '../../sounds/RingTable'
import { SpectrogramCanvas } from '../../sounds/SpectrogramCanvas'
import { SpectrumCanvas } from '../../sounds/SpectrumCanvas'
import '../../sounds/PointSounds.css'
import type { RoundPlayer } from './usePlayer'

interface SoundPicturesProps {
  readonly clip: QuestionClip
  /** There is no source in it. */
  readonly isQuiet: boolean
  readonly player: RoundPlayer
}

interface Pictures {
  readonly spectrum: PowerDensity | null
  readonly floor: PowerDensity | null
  readonly spectrogram: SpectrogramPicture
  readonly cut: PlainSamples
}

/** One clip with what told in it: to be looked at, and heard with and without. */
export function SoundPictures({ clip, isQuiet, player }: SoundPicturesProps) {
  const { say } = useSay()
  const pictures = usePictures(clip)
  const rings = clip.evidence.ringList
  const lines = useMemo(() => (pictures === null ? [] : linesOf(pictures)), [pictures])
  if (pictures === null) return <p className="soft">{say('spectrum_working')}</p>
  const samples = (id: string, heard: PlainSamples) => ({ id: `${clip.name} ${id}`, ...heard })
  const { sampleRateHz } = clip.clip
  const heard = [
    ['label_hear_whole', samples('whole', { samples: clip.clip.channels[0]!, sampleRateHz })],
    ...(isQuiet || clip.telling.length + rings.length === 0
      ? []
      : [['label_hear_without', samples('cut', pictures.cut)] as const]),
    ...(clip.without === null || isQuiet
      ? []
      : [['label_hear_floor', samples('floor', { samples: clip.without.channels[0]!, sampleRateHz })] as const]),
  ] as const
  return (
    <>
      <ul className="stack-small">
        {clip.telling.map(({ lowHz, highHz, overFloorDb }) => (
          <li key={lowHz}>
            {say('practice_band_tells', { low_hz: lowHz, high_hz: highHz, over_floor_db: overFloorDb })}
          </li>
        ))}
        {clip.telling.length === 0 && <li>{say(nothingWords(clip, isQuiet))}</li>}
        <li>
          {rings.length === 0
            ? say('practice_no_rings')
            : say(isQuiet ? 'practice_rings_false' : 'practice_rings_tell', { count: rings.length })}
        </li>
      </ul>
      <fieldset className="practice-hear">
        <legend>{say('label_hear_it')}</legend>
        {heard.map(([words, track]) => (
          <Button
            key={words}
            icon={<ListenIcon name={player.playing === track.id ? 'pause' : 'play'} />}
            aria-pressed={player.playing === track.id}
            onClick={() => player.toggle(track)}
          >
            {say(words)}
          </Button>
        ))}
      </fieldset>
      <section className="point-part" aria-label={say('heading_spectrum')}>
        <h3>{say('heading_spectrum')}</h3>
        <div className="spectrum-frame">
          <SpectrumCanvas
            lines={lines}
            telling={clip.telling}
            band={null}
            view={PASS_BAND_LIMITS}
            cursorHz={null}
            stepped={false}
            levelsWords={say('label_density_axis')}
            onRead={() => undefined}
            onBand={() => undefined}
            onZoom={() => undefined}
          />
        </div>
      </section>
      <section className="point-part" aria-label={say('heading_spectrogram')}>
        <h3>{say('heading_spectrogram')}</h3>
        <div className="spectrogram-frame">
          <SpectrogramCanvas
            picture={pictures.spectrogram}
            rings={rings}
            durationS={clip.evidence.durationS}
            band={null}
          />
        </div>
        <RingTable rings={rings} />
      </section>
    </>
  )
}

/** Why no band is pointed out. */
function nothingWords({ without }: QuestionClip, isQuiet: boolean) {
  if (without === null) return 'practice_no_floor'
  return isQuiet ? 'practice_nothing_tells' : 'practice_faint_tells'
}

/** Steps of a line of the spectrum an octave: about what a phone can show. */
const PER_OCTAVE = 24

function linesOf({ spectrum, floor }: Pictures) {
  const line = (role: 'on' | 'off', density: PowerDensity | null) => {
    if (density === null) return []
    const { hz, levelDbPerHz } = thinSpectrum(density, { ...PASS_BAND_LIMITS, perOctave: PER_OCTAVE })
    return [{ role, places: Array.from(hz, (x, i) => ({ x, y: levelDbPerHz[i]! })) }]
  }
  return [...line('on', spectrum), ...line('off', floor)]
}

function usePictures(clip: QuestionClip): Pictures | null {
  const { analyst } = useApp()
  const [pictures, setPictures] = useState<Pictures | null>(null)
  useEffect(() => {
    const control = new AbortController()
    const { signal } = control
    const spectrumOf = (sound: QuestionClip['clip']) =>
      analyst.call('spectrum', { sound: { decoded: sound }, segmentS: SPECTRUM_SEGMENT_S }, { signal })
    const telling = { bands: clip.telling, rings: clip.evidence.ringList }
    Promise.all([
      spectrumOf(clip.clip),
      clip.without === null ? null : spectrumOf(clip.without),
      analyst.call('spectrogram', { sound: { decoded: clip.clip }, ...SPECTROGRAM }, { signal }),
      analyst.call('withoutTelling', { clip: clip.clip, telling }, { signal }),
    ]).then(
      ([spectrum, floor, spectrogram, cut]) => setPictures({ spectrum, floor, spectrogram, cut }),
      () => undefined, // cancelled: another clip is on show
    )
    return () => control.abort()
  }, [analyst, clip])
  return pictures
}
