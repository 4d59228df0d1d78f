import type { ClipEvidence } from '../evidence/evidence'
import { BAND_FEATURES, CLIP_FEATURES, type Feature } from '../evidence/features'
import type { Timbre } from '../spectrum/timbre'
import { RING_FEATURES } from './ringFeatures'

/** What is measured of one clip for the detector. */
export interface HeardSound {
  readonly evidence: ClipEvidence
  /** `null` for a clip that is too short or silent. */
  readonly timbre: Timbre | null
}

/** One number that the detector looks at. None of them knows how loud the clip was recorded. */
export interface DetectorFeature {
  /** Of the one list of features where it stands there, else its own; unit at the end where it has one. */
  readonly id: string
  readonly meaning: string
  /** `null` where the clip cannot say. */
  readonly of: (sound: HeardSound) => number | null
}

/** Features of the one list as they are: they say nothing of the gain. */
const AS_THEY_ARE = ['bubbling', 'gurgle_db', 'ring_tonality', 'ring_strength_db', 'ring_share', 'regularity']
/** Those that span octaves or orders of magnitude: ln(1 + value). */
const LOGARITHMIC = ['ring_rate_per_s', 'ring_spread_octaves', 'burst_rate_per_s']
/** Those that are only there with a ring: ln(value). */
const OF_RINGS = ['ring_pitch_hz', 'ring_decay_s']
/** Bands whose level is told against the clip's own, by nominal name, Hz: what soil lets through and a little more. */
const SHAPE_HZ = [100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150]
const COEFFICIENTS = 13

function listed(id: string): Feature {
  return [...CLIP_FEATURES, ...BAND_FEATURES].find((feature) => feature.id === id)!
}

function changed(id: string, name: string, change: (value: number) => number): DetectorFeature {
  const feature = listed(id)
  return {
    id: name,
    meaning: feature.meaning,
    of: ({ evidence }) => {
      const value = feature.of(evidence)
      return value === null ? null : change(value)
    },
  }
}

/** A level of the list against the clip's own from 100 Hz to 2.5 kHz. */
function against(id: string, name: string): DetectorFeature {
  const [feature, level] = [listed(id), listed('level_dbfs')]
  return {
    id: name,
    meaning: `${feature.meaning} Against the clip's own level.`,
    of: ({ evidence }) => {
      const [value, own] = [feature.of(evidence), level.of(evidence)]
      return value === null || own === null ? null : value - own
    },
  }
}

/** How far one level of a band stands over another of the same. */
function swing(hz: number, over: string, under: string, name: string, meaning: string): DetectorFeature {
  const [upper, lower] = [listed(`band_${hz}_hz_${over}_dbfs`), listed(`band_${hz}_hz_${under}_dbfs`)]
  return {
    id: `band_${hz}_hz_${name}_db`,
    meaning,
    of: ({ evidence }) => {
      const [high, low] = [upper.of(evidence), lower.of(evidence)]
      return high === null || low === null ? null : high - low
    },
  }
}

function ofTimbre(id: string, meaning: string, pick: (timbre: Timbre) => number | undefined): DetectorFeature {
  return { id, meaning, of: ({ timbre }) => (timbre === null ? null : (pick(timbre) ?? null)) }
}

/**
 * What the detector looks at, in the order of a model's numbers: rings and their kinds, the shape of the spectrum, how
 * each band swells, and timbre. Gain plays no part: each device has its own.
 */
export const DETECTOR_FEATURES: readonly DetectorFeature[] = [
  ...AS_THEY_ARE.map((id) => changed(id, id, (value) => value)),
  ...LOGARITHMIC.map((id) => changed(id, `ln_1_plus_${id}`, (value) => Math.log1p(value))),
  ...OF_RINGS.map((id) => changed(id, `ln_${id}`, (value) => Math.log(Math.max(value, 1e-6)))),
  against('airborne_dbfs', 'airborne_against_level_db'),
  ...SHAPE_HZ.map((hz) => against(`band_${hz}_hz_level_dbfs`, `band_${hz}_hz_against_level_db`)),
  ...RING_FEATURES.map(({ id, meaning, of }) => ({ id, meaning, of: ({ evidence }: HeardSound) => of(evidence) })),
  ...SHAPE_HZ.map((hz) => swing(hz, 'busy', 'quiet', 'swell', 'How far busy moments stand over quiet ones in a band.')),
  ...SHAPE_HZ.map((hz) =>
    swing(hz, 'level', 'quiet', 'burst', 'How far the mean level of a band stands over its quiet moments.'),
  ),
  ...Array.from({ length: COEFFICIENTS - 1 }, (_, i) =>
    ofTimbre(`mfcc_${i + 1}`, 'Colour of the sound: mel-frequency cepstral coefficient.', ({ mfcc }) => mfcc[i + 1]),
  ),
  ...Array.from({ length: COEFFICIENTS }, (_, i) =>
    ofTimbre(`mfcc_spread_${i}`, 'How far that coefficient changes within the clip.', (t) => t.mfccSpread[i]),
  ),
]

/** The numbers of a clip in the order of the list. */
export function detectorValues(sound: HeardSound): (number | null)[] {
  return DETECTOR_FEATURES.map((feature) => feature.of(sound))
}
