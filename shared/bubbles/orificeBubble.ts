import { GRAVITY_M_PER_S2 } from '../base/units'
import { WATER_DENSITY_KG_PER_M3, WATER_SURFACE_TENSION_N_PER_M } from './minnaert'

/**
 * Radius of a bubble that lets go of a hole slowly: its buoyancy has just torn the rim of the hole.
 *
 *     R = ³√(3·σ·a / (2·ρ·g)),   a: radius of the hole
 *
 * The cube root says why pitch is a poor measure of a leak's size: eight times the hole, twice the bubble.
 *
 * @param holeRadiusM m, > 0.
 * @returns m.
 * @see Tate's law in Fritz's form, from memory. [Tate1864] in shared/base/sources.ts
 */
export function slowBubbleRadiusM(holeRadiusM: number): number {
  const balance = (3 * WATER_SURFACE_TENSION_N_PER_M * holeRadiusM) / (2 * WATER_DENSITY_KG_PER_M3 * GRAVITY_M_PER_S2)
  return Math.cbrt(balance)
}

/**
 * Radius of a bubble blown through a hole by a brisk flow of air: the flow alone sets it, not the hole.
 *
 *     V = 1.378·Q^(6/5)·g^(−3/5)
 *
 * @param airFlowM3PerS m³/s, > 0.
 * @returns m.
 * @see Davidson & Schuler 1960; the constant is from memory (1.138 is also in use). [DavidsonSchuler1960]
 */
export function briskBubbleRadiusM(airFlowM3PerS: number): number {
  const volumeM3 = 1.378 * airFlowM3PerS ** 1.2 * GRAVITY_M_PER_S2 ** -0.6
  return Math.cbrt((3 * volumeM3) / (4 * Math.PI))
}
