import type { FittingKind, NoiseKind } from '../../../../shared/line/line'
import { CHOICE_WORDS } from '../../../../shared/report/choiceWords'

/** What a cover is called. */
export const COVER_WORDS = CHOICE_WORDS.cover

export const NOISE_WORDS = {
  pump: 'label_noise_pump',
  motor: 'label_noise_motor',
  traffic: 'label_noise_traffic',
  water: 'label_noise_water',
  other: 'label_noise_other',
} as const satisfies Record<NoiseKind, string>

export const FITTING_WORDS = {
  elbow: 'label_fitting_elbow',
  tee: 'label_fitting_tee',
  coupling: 'label_fitting_coupling',
  valve: 'label_fitting_valve',
  end: 'label_fitting_end',
  other: 'label_fitting_other',
} as const satisfies Record<FittingKind, string>
