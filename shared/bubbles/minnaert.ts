import { InputError } from '../base/errors'
import { ATMOSPHERE_PA } from '../base/units'

/** Water at 20 °C, kg/m³. [CRCWater] in shared/base/sources.ts */
export const WATER_DENSITY_KG_PER_M3 = 998.2

/** Ratio of the heat capacities of air; a bubble this large breathes adiabatically. [Minnaert1933] */
export const AIR_HEAT_RATIO = 1.4

/** Surface tension of clean water against air at 20 °C, N/m. [CRCWater] */
export const WATER_SURFACE_TENSION_N_PER_M = 0.0728

/**
 * How far the pitch of a bubble may lie from Minnaert's for its size, as factors: near a hard wall it rings down to
 * √(ln 2) = 0.83 of the free pitch (Strasberg), in a tube lower still, close under a soft free surface up to about a
 * tenth higher. So a radius read from a pitch is good to about −20 % and +10 %, before the pressure is even known.
 *
 * @see Strasberg 1953. [Strasberg1953] in shared/base/sources.ts; the upper figure is from memory.
 */
export const BOUNDARY_PITCH_FACTORS = { low: Math.sqrt(Math.LN2), high: 1.1 } as const

export interface BubbleWater {
  /** Absolute pressure of the water round the bubble, Pa; one atmosphere unless given. */
  readonly pressurePa?: number
  /** kg/m³; fresh water at 20 °C unless given. */
  readonly densityKgPerM3?: number
}

/**
 * Pitch of a freely ringing air bubble in water.
 *
 *     f = √(3·γ·p / ρ) / (2π·a)
 *
 * A bubble inside a pressurised pipe feels the line's pressure, one outside in the ground feels the ground water's:
 * say which, since at 20 psi gauge the same bubble rings 1.54 times higher.
 *
 * @param radiusM Radius of the bubble, m, > 0.
 * @returns Hz.
 * @throws {InputError} radius, pressure or density not > 0.
 * @see Minnaert 1933. [Minnaert1933] in shared/base/sources.ts
 * @example minnaertPitchHz(0.003) // 1095.4
 */
export function minnaertPitchHz(radiusM: number, water: BubbleWater = {}): number {
  positive('radiusM', radiusM)
  return pitchTimesRadius(water) / radiusM
}

/**
 * Radius of the bubble that rings at this pitch: the inverse of `minnaertPitchHz`.
 *
 * @param pitchHz Hz, > 0.
 * @returns m; see `BOUNDARY_PITCH_FACTORS` for how far to trust it.
 * @throws {InputError} pitch, pressure or density not > 0.
 */
export function minnaertRadiusM(pitchHz: number, water: BubbleWater = {}): number {
  positive('pitchHz', pitchHz)
  return pitchTimesRadius(water) / pitchHz
}

/**
 * The same pitch with the surface's tension, which stiffens small bubbles: 0.5 % at 0.1 mm, nothing that matters at
 * the millimetres heard through soil. A check on the plain form.
 *
 *     f = √((3·γ·(p + 2σ/a) − 2σ/a) / ρ) / (2π·a)
 *
 * @see Leighton 1994, chapter 3. [Leighton1994] in shared/base/sources.ts
 */
export function minnaertPitchWithTensionHz(radiusM: number, water: BubbleWater = {}): number {
  positive('radiusM', radiusM)
  const { pressurePa = ATMOSPHERE_PA, densityKgPerM3 = WATER_DENSITY_KG_PER_M3 } = water
  const squeezePa = (2 * WATER_SURFACE_TENSION_N_PER_M) / radiusM
  const stiffnessPa = 3 * AIR_HEAT_RATIO * (pressurePa + squeezePa) - squeezePa
  return Math.sqrt(stiffnessPa / densityKgPerM3) / (2 * Math.PI * radiusM)
}

function pitchTimesRadius({
  pressurePa = ATMOSPHERE_PA,
  densityKgPerM3 = WATER_DENSITY_KG_PER_M3,
}: BubbleWater): number {
  positive('pressurePa', pressurePa)
  positive('densityKgPerM3', densityKgPerM3)
  return Math.sqrt((3 * AIR_HEAT_RATIO * pressurePa) / densityKgPerM3) / (2 * Math.PI)
}

function positive(name: string, value: number): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) throw new InputError(`${name} is ${value}; must be > 0`)
}
