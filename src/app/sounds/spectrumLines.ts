import type { PassBand } from '../../../shared/listen/passBand'
import { PASS_BAND_LIMITS } from '../../../shared/listen/passBand'
import { thinSpectrum } from '../../../shared/spectrum/thinSpectrum'
import { THIRD_OCTAVE_BANDS } from '../../../shared/spectrum/thirdOctaveBands'
import type { PowerDensity } from '../../../shared/spectrum/welch'
import type { ClipReading } from '../analysis/clipReader'
import type { LineRole } from '../charts/lineDashes'
import type { PanelClip } from './panelClips'

/** A line of the spectrum, with the clip it is of. */
export interface ClipLine {
  readonly role: LineRole
  readonly clip: PanelClip
  readonly places: readonly { readonly x: number; readonly y: number | null }[]
}

export const LINE_ROLES: readonly LineRole[] = ['on', 'off', 'before', 'after']

/** Steps over the whole width: about as many as a phone has pixels to draw them. */
const STEPS = 170

/** The lines of the clips that were read so far. Finer steps when less of the axis is in view. */
export function spectrumLines(
  clips: Readonly<Record<LineRole, PanelClip | null>>,
  spectra: ReadonlyMap<string, ClipReading<PowerDensity>>,
  detail: 'fine' | 'thirds',
  view: PassBand,
): ClipLine[] {
  const perOctave = Math.round(STEPS / Math.log2(view.highHz / view.lowHz))
  return LINE_ROLES.flatMap((role) => {
    const clip = clips[role]
    if (clip === null) return []
    if (detail === 'thirds') return [{ role, clip, places: bandPlaces(clip) }]
    const spectrum = spectra.get(clip.id)
    if (!spectrum?.ok) return []
    const { hz, levelDbPerHz } = thinSpectrum(spectrum.value, { ...PASS_BAND_LIMITS, perOctave })
    return [{ role, clip, places: Array.from(hz, (x, i) => ({ x, y: levelDbPerHz[i]! })) }]
  })
}

/** From edge to edge: a level is drawn up to the upper edge of its band, and the first one begins at its lower. */
function bandPlaces({ evidence }: PanelClip): ClipLine['places'] {
  const levels = THIRD_OCTAVE_BANDS.map((band, i) => ({ band, y: evidence?.bands[i]?.levelDbFs ?? null }))
  return [{ x: levels[0]!.band.lowerHz, y: levels[0]!.y }, ...levels.map(({ band, y }) => ({ x: band.upperHz, y }))]
}
