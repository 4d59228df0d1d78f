import { dbToPower, powerToDb } from '../base/units'
import { THIRD_OCTAVE_BANDS } from '../spectrum/thirdOctaveBands'
import type { BandEvidence, ClipEvidence } from './evidence'

/** One number that a clip gives. The list below feeds table, CSV, JSON, chart, help and the detector alike. */
export interface Feature {
  /** snake_case with the unit at the end. */
  readonly id: string
  /** As shown; empty for a bare number. */
  readonly unit: string
  /** Smallest and largest value it can take; `null` where there is no bound. */
  readonly range: readonly [number | null, number | null]
  /** Short heading of a column. */
  readonly heading: string
  /** What it says, in plain words. */
  readonly meaning: string
  /** `null` where the clip cannot say. */
  readonly of: (evidence: ClipEvidence) => number | null
}

const BUBBLE_BAND_HZ = [95, 2600] as const
const AIRBORNE_BAND_HZ = [3000, 8000] as const

/** Features of the whole clip, in the order shown. */
export const CLIP_FEATURES: readonly Feature[] = [
  {
    id: 'bubbling',
    unit: '',
    range: [0, 1],
    heading: 'bubbling',
    meaning:
      'How surely something bubbles here: 0 no, 1 yes. It rises with the rings heard beyond what plain noise gives.',
    of: (evidence) => evidence.bubbling,
  },
  {
    id: 'level_dbfs',
    unit: 'dBFS',
    range: [null, null],
    heading: 'level',
    meaning: 'Steady loudness from 100 Hz to 2.5 kHz, where bubbles behind soil are heard. Brief knocks are left out.',
    of: (evidence) => powerBetween(evidence, BUBBLE_BAND_HZ, (band) => band.steadyDbFs ?? band.levelDbFs),
  },
  {
    id: 'gurgle_db',
    unit: 'dB',
    range: [null, null],
    heading: 'gurgle',
    meaning: 'How far busy moments stand over quiet ones from 100 Hz to 2.5 kHz. Steady noise gives about 0.',
    of: (evidence) => {
      const busy = powerBetween(evidence, BUBBLE_BAND_HZ, (band) => band.busyDbFs)
      const quiet = powerBetween(evidence, BUBBLE_BAND_HZ, (band) => band.quietDbFs)
      return busy === null || quiet === null ? null : busy - quiet
    },
  },
  {
    id: 'airborne_dbfs',
    unit: 'dBFS',
    range: [null, null],
    heading: 'airborne',
    meaning: 'Loudness above 3 kHz. Soil lets almost none of that through, so it came through the air.',
    of: (evidence) => powerBetween(evidence, AIRBORNE_BAND_HZ, (band) => band.levelDbFs),
  },
  {
    id: 'ring_rate_per_s',
    unit: '/s',
    range: [0, null],
    heading: 'rings',
    meaning: 'Bubbles heard a second: short decaying tones.',
    of: (evidence) => evidence.rings.ratePerS,
  },
  {
    id: 'ring_pitch_hz',
    unit: 'Hz',
    range: [0, null],
    heading: 'pitch',
    meaning: 'Middle pitch of the rings. Big bubbles ring low.',
    of: (evidence) => evidence.rings.medianPitchHz,
  },
  {
    id: 'ring_spread_octaves',
    unit: 'oct',
    range: [0, null],
    heading: 'spread',
    meaning: 'How much the pitch differs from ring to ring. Bubbles differ; a machine repeats itself.',
    of: (evidence) => evidence.rings.pitchSpreadOctaves,
  },
  {
    id: 'ring_decay_s',
    unit: 's',
    range: [0, null],
    heading: 'decay',
    meaning: 'Time in which a ring dies away to about a third.',
    of: (evidence) => evidence.rings.medianDecayS,
  },
  {
    id: 'ring_tonality',
    unit: '',
    range: [0, 1],
    heading: 'tonality',
    meaning: 'How pure the rings are: 1 a clear tone, 0 a mere knock.',
    of: (evidence) => evidence.rings.tonality,
  },
  {
    id: 'ring_strength_db',
    unit: 'dB',
    range: [0, null],
    heading: 'strength',
    meaning: 'How far the rings stand over what is around them.',
    of: (evidence) => evidence.rings.medianStrengthDb,
  },
  {
    id: 'ring_radius_m',
    unit: 'm',
    range: [0, null],
    heading: 'radius',
    meaning: 'Bubble radius that the middle pitch stands for, if the bubble rings at the pressure of the open air.',
    of: (evidence) => evidence.rings.medianRadiusM,
  },
  {
    id: 'burst_rate_per_s',
    unit: '/s',
    range: [0, null],
    heading: 'bursts',
    meaning: 'All sudden sounds a second, rings or not.',
    of: (evidence) => evidence.rings.burstRatePerS,
  },
  {
    id: 'ring_share',
    unit: '',
    range: [0, 1],
    heading: 'share',
    meaning: 'Part of the sudden sounds that are rings.',
    of: (evidence) => evidence.rings.ringShare,
  },
  {
    id: 'regularity',
    unit: '',
    range: [0, 1],
    heading: 'regular',
    meaning: 'Rhythm of the sudden sounds: 1 like a clock, 0 by chance. A leak can be either.',
    of: (evidence) => evidence.rings.regularity,
  },
  {
    id: 'slug_rate_hz',
    unit: 'Hz',
    range: [0.1, 3],
    heading: 'slugs',
    meaning: 'Rhythm in which the bubbling swells and fades, when it has one.',
    of: (evidence) => evidence.rings.slugRateHz,
  },
]

const BAND_MEASURES = [
  { name: 'level', meaning: 'Mean level', of: (band: BandEvidence) => band.levelDbFs },
  { name: 'quiet', meaning: 'Level of the quiet moments', of: (band: BandEvidence) => band.quietDbFs },
  { name: 'busy', meaning: 'Level of the busy moments', of: (band: BandEvidence) => band.busyDbFs },
] as const

/**
 * Levels of every band, in rising order. Ids and headings carry the band's nominal name (160), as the trade writes it; the exact
 * mid-band frequency (158.489) is `midHz` of the evidence.
 *
 * @see IEC 61260-1:2014 for the exact frequencies [IEC61260], ISO 266:1997 for the names [ISO266] in sources.ts
 */
export const BAND_FEATURES: readonly Feature[] = THIRD_OCTAVE_BANDS.flatMap(({ nominalHz, lowerHz, upperHz }) =>
  BAND_MEASURES.map((measure) => ({
    id: `band_${nominalHz}_hz_${measure.name}_dbfs`,
    unit: 'dBFS',
    range: [null, null] as const,
    heading: `${nominalHz} Hz ${measure.name}`,
    meaning: `${measure.meaning} in the one-third-octave band round ${nominalHz} Hz.`,
    of: (evidence: ClipEvidence) => {
      const band = evidence.bands.find(({ midHz }) => midHz > lowerHz && midHz < upperHz)
      return band ? measure.of(band) : null
    },
  })),
)

/** Powers of the bands within limits added up, dBFS; `null` when none of them has a level. */
function powerBetween(
  evidence: ClipEvidence,
  [lowHz, highHz]: readonly [number, number],
  levelOf: (band: BandEvidence) => number | null,
): number | null {
  let power = 0
  for (const band of evidence.bands) {
    const level = band.midHz > lowHz && band.midHz < highHz ? levelOf(band) : null
    if (level !== null) power += dbToPower(level)
  }
  return powerToDb(power)
}
