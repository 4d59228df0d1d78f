import { median, standardDeviation } from '../base/statistics'
import type { Ring } from '../bubbles/ring'
import type { ClipEvidence } from '../evidence/evidence'

/** One number made of a clip's rings, one by one. */
export interface RingFeature {
  readonly id: string
  readonly meaning: string
  /** `null` where too few rings were heard to say. */
  readonly of: (evidence: ClipEvidence) => number | null
}

/** From each of these on to the next, rings are counted by pitch, Hz; from the last on up to an end. Chosen: 2/3 octave. */
const FROM_HZ = [100, 160, 250, 400, 630, 1000, 1600, 2500]
const END_HZ = 4000
/** Rings at least so strong, so pure, and with so many half turns until they die away are counted. Chosen. */
const STRENGTHS_DB = [6, 9, 12, 18]
const TONALITIES = [0.5, 0.7, 0.85]
const QUALITIES = [3, 6, 12]
/** Below half a second a rate says nothing. Chosen. */
const LEAST_S = 0.5

/** Quality of a ring as of a resonance: π·pitch·decay. */
function qualityOf({ pitchHz, decayS }: Ring): number {
  return Math.PI * pitchHz * decayS
}

function counted(name: string, meaning: string, isOne: (ring: Ring) => boolean): RingFeature {
  return {
    id: `ln_1_plus_${name}_per_10_s`,
    meaning,
    of: ({ ringList, durationS }) => Math.log1p((10 * ringList.filter(isOne).length) / Math.max(LEAST_S, durationS)),
  }
}

function ofQualities(id: string, meaning: string, least: number, of: (ln: number[]) => number): RingFeature {
  return {
    id,
    meaning,
    of: ({ ringList }) => {
      const ln = ringList.map((ring) => Math.log(Math.max(1e-6, qualityOf(ring))))
      return ln.length < least ? null : of(ln)
    },
  }
}

/** How many rings of which kind, and how they are spread over the clip: what medians over all rings do not tell. */
export const RING_FEATURES: readonly RingFeature[] = [
  ...FROM_HZ.map((fromHz, i) =>
    counted(
      `rings_from_${fromHz}_hz`,
      'Rings of that pitch, up to the next of the list.',
      ({ pitchHz }) => pitchHz >= fromHz && pitchHz < (FROM_HZ[i + 1] ?? END_HZ),
    ),
  ),
  ...STRENGTHS_DB.map((db) => counted(`rings_over_${db}_db`, 'Rings so strong.', ({ strengthDb }) => strengthDb > db)),
  ...TONALITIES.map((least) =>
    counted(`rings_over_tonality_${100 * least}`, 'Rings so pure, in hundredths.', ({ tonality }) => tonality > least),
  ),
  ...QUALITIES.map((least) =>
    counted(
      `rings_over_quality_${least}`,
      'Rings that last so long for their pitch.',
      (ring) => qualityOf(ring) > least,
    ),
  ),
  ofQualities('ln_ring_quality', 'How long rings last for their pitch.', 1, median),
  ofQualities('ln_ring_quality_spread', 'How much that differs from ring to ring.', 3, standardDeviation),
  {
    id: 'rings_span_share',
    meaning: 'Part of the clip between its first and its last ring.',
    of: ({ ringList, durationS }) =>
      ringList.length < 2 ? 0 : (ringList.at(-1)!.timeS - ringList[0]!.timeS) / Math.max(LEAST_S, durationS),
  },
  {
    id: 'seconds_with_rings_share',
    meaning: 'Part of the seconds of the clip in which something rang.',
    of: ({ ringList, durationS }) =>
      new Set(ringList.map(({ timeS }) => Math.floor(timeS))).size / Math.max(1, Math.floor(durationS)),
  },
]
