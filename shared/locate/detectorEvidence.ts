import type { SettingDown } from './settingDown'

/**
 * What a detector's word counts for beside levels and rings, which tell of the same sound. Chosen: a half, as two clips of one
 * place are not two places; and where air passes below, which bubbles too, a quarter of that.
 */
const WEIGHT = 0.5
const PASSED_WEIGHT = 0.125
/** Signal over floor in the best band where a detector hears half of the leaks, dB, and how gently that turns. Chosen. */
const HALF_HEARD_DB = 2
const TURN_DB = 2
/** No clip says more than this for or against, nepers: anything may have passed by. Chosen. */
const MOST_NEPERS = 4

/**
 * How much better what a detector said fits leaks that stand so far over the floor than no leak anywhere.
 *
 * @param settings    Those that no detector heard are passed over.
 * @param overFloorDb Of each leak, modelled signal over floor in its best band for each setting-down, dB; none: no leak.
 * @param passedBy    Whether air passes below each on its way to the leak.
 * @returns ln of the likelihood ratio; 0 without a leak, and without a detector.
 */
export function logDetectorLikelihood(
  settings: readonly SettingDown[],
  overFloorDb: readonly Float64Array[],
  passedBy: readonly boolean[] = [],
): number {
  return settings.reduce((sum, { detectedNepers }, k) => {
    if (detectedNepers === null) return sum
    const unheard = overFloorDb.reduce((share, leak) => share * (1 - heardShare(leak[k]!)), 1)
    const said = Math.max(-MOST_NEPERS, Math.min(MOST_NEPERS, detectedNepers))
    return sum + (passedBy[k] ? PASSED_WEIGHT : WEIGHT) * Math.log((1 - unheard) * Math.exp(said) + unheard)
  }, 0)
}

function heardShare(overFloorDb: number): number {
  return 1 / (1 + Math.exp((HALF_HEARD_DB - overFloorDb) / TURN_DB))
}
