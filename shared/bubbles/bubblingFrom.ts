import type { RingSummary } from './ring'

/** What bubbling is judged by. */
export type BubblingSigns = Pick<RingSummary, 'ratePerS' | 'ringShare' | 'medianPitchHz' | 'pitchSpreadOctaves'>

/**
 * Weighed rings a second that chance gives: noise, and the odd syllable or creak. Four in five of the sounds without
 * bubbles in the tuning half stay below it.
 */
const CHANCE_PER_S = 0.3

/** So many weighed rings a second beyond chance make it nearly two in three (1 − 1/e). Chosen. */
const SCALE_PER_S = 0.8

/**
 * Soil takes 0.12 to 0.96 dB per centimetre and kilohertz [OelzeOBrienDarmody2002], so rings from below seldom lie above
 * 1.6 kHz; those of voices and birds often do. From here on rings count less and less, down to the least share.
 */
const SOIL_PITCH_HZ = 1600
const AIR_PITCH_HZ = 2800
const LEAST_PITCH_SHARE = 0.3

/**
 * A bubble that rings below 260 Hz is over 25 mm across, as wide as the bore of the lines this is for, and at 180 Hz 36 mm:
 * such a pitch is likelier the stroke of a pump. Counted less and less from the one to the other. Chosen.
 */
const BORE_PITCH_HZ = 260
const STROKE_PITCH_HZ = 180

/** Bubbles, even of one hole, differ in pitch more than this; a motor's or a bell's tone does not, octaves. Chosen. */
const ONE_PITCH_OCTAVES = 0.04
const ONE_PITCH_SHARE = 0.3

/**
 * How surely something bubbles here.
 *
 *     1 − exp(−(rate·√share·weights − chance)/scale), and 0 below chance
 *
 * The ring rate counts, less so when most bursts are no rings (speech and steps have many bursts and few rings), when the
 * rings lie higher than soil lets through or lower than a bubble of the pipe's bore, and when all have one and the same
 * pitch.
 *
 * @returns 0 (no more rings than chance gives) to 1; never falls as the ring rate rises with the rest as it was.
 * @example bubblingFrom({ ratePerS: 6, ringShare: 0.4, medianPitchHz: 700, pitchSpreadOctaves: 0.5 }) // 0.99
 */
export function bubblingFrom({ ratePerS, ringShare, medianPitchHz, pitchSpreadOctaves }: BubblingSigns): number {
  const onePitch = pitchSpreadOctaves !== null && pitchSpreadOctaves < ONE_PITCH_OCTAVES ? ONE_PITCH_SHARE : 1
  const weighed = ratePerS * Math.sqrt(ringShare ?? 0) * pitchWeight(medianPitchHz) * onePitch
  return 1 - Math.exp(-Math.max(0, weighed - CHANCE_PER_S) / SCALE_PER_S)
}

function pitchWeight(medianPitchHz: number | null): number {
  if (medianPitchHz === null) return 1
  const tooHigh = (medianPitchHz - SOIL_PITCH_HZ) / (AIR_PITCH_HZ - SOIL_PITCH_HZ)
  const tooLow = (BORE_PITCH_HZ - medianPitchHz) / (BORE_PITCH_HZ - STROKE_PITCH_HZ)
  return 1 - (1 - LEAST_PITCH_SHARE) * Math.max(0, Math.min(1, Math.max(tooHigh, tooLow)))
}
