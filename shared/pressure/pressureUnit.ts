import { PASCALS_PER_PSI } from '../base/units'

export const PRESSURE_UNITS = ['psi', 'kPa', 'bar'] as const
export type PressureUnit = (typeof PRESSURE_UNITS)[number]

/** Kilopascals in one of each; exact by definition. [NIST811] in shared/base/sources.ts */
export const KPA_PER: Readonly<Record<PressureUnit, number>> = { psi: PASCALS_PER_PSI / 1000, kPa: 1, bar: 100 }

/** Steps that gauges of each unit commonly have: common practice, no source. The finest first. */
export const COMMON_RESOLUTIONS: Readonly<Record<PressureUnit, readonly number[]>> = {
  psi: [0.1, 0.2, 0.5, 1, 2],
  kPa: [0.5, 1, 2, 5, 10],
  bar: [0.01, 0.02, 0.05, 0.1],
}
