import { median, robustSpread } from '../base/statistics'
import { ATMOSPHERE_PA } from '../base/units'
import { BURST_GAP_S, type FoundRings } from './findRings'
import { minnaertRadiusM } from './minnaert'
import { regularity, slugRateHz } from './rhythm'
import type { RingSummary } from './ring'

/** The spread of fewer pitches is chance. */
const LEAST_FOR_SPREAD = 5

/**
 * What the rings of one clip say together.
 *
 * @param pressurePa Absolute pressure assumed for the bubble's radius, Pa: one atmosphere unless said, right for a bubble
 *   outside the pipe in shallow ground. Inside a pressurised line the true radius is larger by the root of the ratio.
 */
export function summariseRings(found: FoundRings, pressurePa: number = ATMOSPHERE_PA): RingSummary {
  const { rings, burstTimesS, ringingBurstCount, durationS } = found
  const perS = (count: number) => (durationS > 0 ? count / durationS : 0)
  const middle = (values: number[]) => (values.length === 0 ? null : median(values))
  const pitches = rings.map((ring) => ring.pitchHz)
  const medianPitchHz = middle(pitches)
  return {
    ratePerS: perS(rings.length),
    medianPitchHz,
    pitchSpreadOctaves: rings.length < LEAST_FOR_SPREAD ? null : robustSpread(pitches.map(Math.log2)),
    medianDecayS: middle(rings.map((ring) => ring.decayS)),
    tonality: middle(rings.map((ring) => ring.tonality)),
    medianStrengthDb: middle(rings.map((ring) => ring.strengthDb)),
    medianRadiusM: medianPitchHz === null ? null : minnaertRadiusM(medianPitchHz, { pressurePa }),
    assumedPressurePa: pressurePa,
    burstRatePerS: perS(burstTimesS.length),
    ringShare: burstTimesS.length === 0 ? null : Math.min(1, ringingBurstCount / burstTimesS.length),
    regularity: regularity(burstTimesS, BURST_GAP_S),
    slugRateHz: slugRateHz(
      rings.map((ring) => ring.timeS),
      durationS,
    ),
  }
}
