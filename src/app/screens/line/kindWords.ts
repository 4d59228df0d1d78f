import type { Cover, FittingKind, NoiseKind } from '../../../../shared/line/line'

export const COVER_WORDS = {
  grass: 'label_cover_grass',
  soil: 'label_cover_soil',
  gravel: 'label_cover_gravel',
  pavers: 'label_cover_pavers',
  slab: 'label_cover_slab',
  other: 'label_cover_other',
} as const satisfies Record<Cover, string>

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
