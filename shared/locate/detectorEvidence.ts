import type { SettingDown } from './settingDown'

/** What a detector's word counts for beside levels and rings, which tell of the same sound. Chosen on sweeps that judge nothing. */
const WEIGHT = 0.3
/** Share of clips in which something else sounds like a leak; and where air passes below, which bubbles too. Chosen. */
const ODD_SHARE = 0.1
const PASSED_SHARE = 0.5
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
    const ratio = Math.exp(said)
    const odd = passedBy[k] ? PASSED_SHARE : ODD_SHARE
    return sum + WEIGHT * Math.log(((1 - unheard) * ratio) / mixed(ratio, odd) + unheard)
  }, 0)
}

/** Likelihood ratio to no leak of a clip that may sound like one all the same. */
function mixed(ratio: number, odd: number): number {
  return 1 - odd + odd * ratio
}

function heardShare(overFloorDb: number): number {
  return 1 / (1 + Math.exp((HALF_HEARD_DB - overFloorDb) / TURN_DB))
}
