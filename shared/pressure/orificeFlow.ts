import { InputError } from '../base/errors'
import { WATER_DENSITY_KG_PER_M3 } from './waterProperties'

/** Discharge of a sharp-edged hole: handbook value, from memory. */
export const SHARP_EDGED = 0.6

/**
 * Water through a hole into the open.
 *
 *     Q = Cd · A · √(2·Δp/ρ)
 *
 * Soil packed against the hole lets less through.
 *
 * @param diameterM Of the hole, ≥ 0.
 * @param gaugePa   Over the pressure outside, ≥ 0.
 * @returns m³/s.
 * @throws {InputError} a negative diameter or pressure.
 */
export function orificeFlowM3PerS(diameterM: number, gaugePa: number, discharge = SHARP_EDGED): number {
  if (!(diameterM >= 0)) throw new InputError(`diameterM is ${diameterM}; must be 0 or more`)
  if (!(gaugePa >= 0)) throw new InputError(`gaugePa is ${gaugePa}; must be 0 or more`)
  return discharge * (Math.PI / 4) * diameterM ** 2 * Math.sqrt((2 * gaugePa) / WATER_DENSITY_KG_PER_M3)
}

/**
 * Diameter of the round hole that lets this much through.
 *
 * @returns m.
 * @throws {InputError} a negative flow; a pressure that is not above 0.
 */
export function orificeDiameterM(flowM3PerS: number, gaugePa: number, discharge = SHARP_EDGED): number {
  if (!(flowM3PerS >= 0)) throw new InputError(`flowM3PerS is ${flowM3PerS}; must be 0 or more`)
  if (!(gaugePa > 0)) throw new InputError(`gaugePa is ${gaugePa}; must be > 0`)
  return Math.sqrt(flowM3PerS / orificeFlowM3PerS(1, gaugePa, discharge))
}
