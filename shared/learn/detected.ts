import type { Detected } from '../evidence/detected'
import type { DetectorModel } from './model'
import { type Circumstances, scoreSound } from './scoreSound'

/**
 * What a detector says of a clip: the odds of its calibration over the odds of its training clips, times the trust.
 *
 * @param values `detectorValues` of the clip.
 * @throws {InputError} values of another list of features.
 */
export function detected(model: DetectorModel, values: readonly (number | null)[], told: Circumstances): Detected {
  const { probability, trust, isNewDevice, isNewCover } = scoreSound(model, values, told)
  const kept = Math.min(1 - 1e-9, Math.max(1e-9, probability))
  const before = Math.log(model.card.leaks / model.card.others)
  return { nepers: trust * (Math.log(kept / (1 - kept)) - before), probability, trust, isNewDevice, isNewCover }
}
