import { InputError } from '../base/errors'
import { METRES_PER_FOOT, PASCALS_PER_PSI } from '../base/units'

/** One US gallon, 231 cubic inches, m³; exact. [NIST811] in shared/base/sources.ts */
export const M3_PER_GALLON = 231 * 0.0254 ** 3

/**
 * Water that the waterworks' rule for mains lets a tested length take up in an hour.
 *
 *     L = S·D·√P / 148 000   gal/h, with feet, inches and psi
 *
 * Shown only to compare with: it is meant for long mains with gasketed joints. A short solvent-welded line loses nothing.
 *
 * @param main `lengthM`, `diameterM` (nominal) and `gaugePa` of the test, all > 0.
 * @returns m³/h.
 * @throws {InputError} any of them not above 0.
 * @see ANSI/AWWA C600 and C605, hydrostatic testing; NFPA 13 prints the same. [AWWAC600] in shared/base/sources.ts
 */
export function makeUpAllowanceM3PerH(main: {
  readonly lengthM: number
  readonly diameterM: number
  readonly gaugePa: number
}): number {
  for (const [name, value] of Object.entries(main)) {
    if (!(value > 0)) throw new InputError(`${name} is ${value}; must be > 0`)
  }
  const feet = main.lengthM / METRES_PER_FOOT
  const inches = main.diameterM / 0.0254
  return ((feet * inches * Math.sqrt(main.gaugePa / PASCALS_PER_PSI)) / 148_000) * M3_PER_GALLON
}
