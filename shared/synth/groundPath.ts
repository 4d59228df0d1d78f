import { DB_PER_NEPER } from '../base/units'

/**
 * Soil between a source and the microphone. Not a parametric fall-off curve but two waves and what happens to them on
 * the way: a body wave with its near field, seen by a sensor that feels vertical motion, and a surface wave, both
 * absorbed in proportion to frequency, interfering as far as rough ground lets them.
 */
export interface Medium {
  /** 0.12 to 0.96 in six topsoils, 2 to 6 kHz. [OelzeOBrienDarmody2002] */
  readonly absorptionDbPerCmKhz: number
  /** Speed of the body wave, 86 to 260 m/s in the same soils. [OelzeOBrienDarmody2002] */
  readonly speedMPerS: number
  /** How much a slanting arrival loses at the sensor: 0 (nothing) to 1 (only its vertical part is felt). Chosen. */
  readonly obliquity: number
  /** Strength of the surface wave against the body wave, 0 to 1. Chosen. */
  readonly surfaceShare: number
  /** How much of the interference of the two waves survives, 0 to 1. Chosen. */
  readonly coherence: number
}

/** Shear waves run at 1/1.5 of the body wave in loose topsoil [Uyanik2010], the surface wave at 0.92 of that (from memory). */
const SURFACE_OVER_BODY_SPEED = 0.92 / 1.5

/** Amplitude left after absorption proportional to frequency over a distance, with nothing else. [OelzeOBrienDarmody2002] */
export function absorbedAmplitude(absorptionDbPerCmKhz: number, frequencyHz: number, distanceM: number): number {
  return Math.exp((-absorptionDbPerCmKhz * distanceM * 100 * frequencyHz) / 1000 / DB_PER_NEPER)
}

/**
 * Amplitude of a point source's body wave against the same source at 1 m without loss.
 *
 *     √(1 + 1/(k·r)²) / r · (d/r)^obliquity · absorption(r)
 *
 * The root is the near field of the velocity round a pulsating sphere (any text on acoustics; from memory). With
 * obliquity 0 and far away it falls as 1/r, with obliquity 1 as 1/r²: the two body-wave rows of Bornitz.
 *
 * @see Kim & Lee 2000 (spreading exponents). [KimLee2000]
 */
export function bodyAmplitude(medium: Medium, frequencyHz: number, depthM: number, acrossM: number): number {
  const r = Math.hypot(depthM, acrossM)
  const kr = (2 * Math.PI * frequencyHz * r) / medium.speedMPerS
  const near = Math.sqrt(1 + 1 / (kr * kr))
  const felt = medium.obliquity === 0 ? 1 : (depthM / r) ** medium.obliquity
  return (near / r) * felt * absorbedAmplitude(medium.absorptionDbPerCmKhz, frequencyHz, r)
}

/**
 * Amplitude of the surface wave a buried source sends out, on the same scale.
 *
 *     share · √(k/r) · e^(−0.9·k·d) · x/r · absorption(x)
 *
 * Spreading √(1/r) on the surface; excited the less the deeper the source; none at the epicentre.
 */
export function surfaceAmplitude(medium: Medium, frequencyHz: number, depthM: number, acrossM: number): number {
  const k = (2 * Math.PI * frequencyHz) / (medium.speedMPerS * SURFACE_OVER_BODY_SPEED)
  const r = Math.hypot(depthM, acrossM)
  const excited = Math.exp(-0.9 * k * depthM) * (acrossM / r)
  if (excited < 1e-8) return 0
  const left = absorbedAmplitude(medium.absorptionDbPerCmKhz, frequencyHz, acrossM)
  return medium.surfaceShare * Math.sqrt(k / r) * excited * left
}

/**
 * Power at the surface from a point source in soil, against the same source at 1 m without loss.
 *
 * @param depthM Of the source below the surface, > 0. @param acrossM From epicentre to sensor, ≥ 0.
 */
export function soilPower(medium: Medium, frequencyHz: number, depthM: number, acrossM: number): number {
  const body = bodyAmplitude(medium, frequencyHz, depthM, acrossM)
  const surface = surfaceAmplitude(medium, frequencyHz, depthM, acrossM)
  if (surface < 1e-3 * body) return body * body
  const k = (2 * Math.PI * frequencyHz) / medium.speedMPerS
  const phase = k * Math.hypot(depthM, acrossM) - (k / SURFACE_OVER_BODY_SPEED) * acrossM
  return body * body + surface * surface + 2 * medium.coherence * body * surface * Math.cos(phase)
}
