import { InputError } from '../base/errors'
import { calibrated } from './calibration'
import { fittedOdds } from './crossValidate'
import { distance } from './distance'
import { probabilityOf } from './logisticRegression'
import type { DetectorModel } from './model'
import { scaled } from './scaling'

/** What a clip's circumstances are, as far as they were told; empty when not. */
export interface Circumstances {
  readonly device: string
  readonly cover: string
}

/** What a detector says of a clip. */
export interface SoundScore {
  /** That it is a leak, calibrated, 0 to 1. */
  readonly probability: number
  /** How far from the training clips, rms standard deviations a feature, and what 99 of 100 of those stay within. */
  readonly distance: number
  readonly usualDistance: number
  /** How much the score may weigh, 0 to 1: less far from the training clips, less where device or cover were never heard. */
  readonly trust: number
  /** Told, and not among the training clips. */
  readonly isNewDevice: boolean
  readonly isNewCover: boolean
}

/** What a score keeps of its weight where the device, or the cover, was never heard in training. Chosen. */
const KEPT = { newDevice: 0.5, newCover: 0.7 }

/**
 * Scores a clip.
 *
 * @param values `detectorValues` of the clip.
 * @throws {InputError} values of another list of features.
 */
export function scoreSound(model: DetectorModel, values: readonly (number | null)[], told: Circumstances): SoundScore {
  if (values.length !== model.features.length) {
    throw new InputError(`${values.length} values for a model of ${model.features.length}; measure the clip anew`)
  }
  const away = distance(model.scaling, values)
  const isNewDevice = told.device !== '' && !model.card.devices.includes(told.device)
  const isNewCover = told.cover !== '' && !model.card.covers.includes(told.cover)
  const near = Math.min(1, (model.usualDistance / Math.max(away, 1e-9)) ** 2)
  return {
    probability: calibrated(model.calibration, fittedOdds(model, scaled(model.scaling, values))),
    distance: away,
    usualDistance: model.usualDistance,
    trust: near * (isNewDevice ? KEPT.newDevice : 1) * (isNewCover ? KEPT.newCover : 1),
    isNewDevice,
    isNewCover,
  }
}

/** A probability that has lost weight: its ln odds times the trust. */
export function trusted({ probability, trust }: Pick<SoundScore, 'probability' | 'trust'>): number {
  const kept = Math.min(1 - 1e-9, Math.max(1e-9, probability))
  return probabilityOf(trust * Math.log(kept / (1 - kept)))
}
