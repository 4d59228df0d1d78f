import { InputError } from '../base/errors'
import { ATMOSPHERE_PA } from '../base/units'

/**
 * Volume of trapped air under pressure, by Boyle's law: p·V stays.
 *
 * @param volumeM3 At the pressure of the atmosphere, ≥ 0.
 * @param gaugePa  Over the atmosphere, > −101 325 Pa.
 * @throws {InputError} a negative volume; a pressure below vacuum.
 */
export function trappedVolumeM3(volumeM3: number, gaugePa: number): number {
  return (checked(volumeM3) * ATMOSPHERE_PA) / absolutePa(gaugePa)
}

/**
 * Volume that trapped air gives for each pascal: V₀·p₀/p².
 *
 * One litre at the atmosphere's pressure gives at 20 psi ten times what 100 ft of 1-1/2 in pipe full of water gives.
 *
 * @returns m³/Pa.
 * @throws {InputError} as `trappedVolumeM3`.
 */
export function airComplianceM3PerPa(volumeM3: number, gaugePa: number): number {
  return (checked(volumeM3) * ATMOSPHERE_PA) / absolutePa(gaugePa) ** 2
}

function checked(volumeM3: number): number {
  if (!(volumeM3 >= 0)) throw new InputError(`volumeM3 is ${volumeM3}; must be 0 or more`)
  return volumeM3
}

function absolutePa(gaugePa: number): number {
  if (!(gaugePa > -ATMOSPHERE_PA)) throw new InputError(`gaugePa is ${gaugePa}; must be above ${-ATMOSPHERE_PA}`)
  return gaugePa + ATMOSPHERE_PA
}
