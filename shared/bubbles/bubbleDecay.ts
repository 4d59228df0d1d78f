import { InputError } from '../base/errors'

/**
 * How fast the ring of an air bubble in water dies away: amplitude ∝ exp(−d·t).
 *
 *     d = 0.13/r + 0.0072·r^(−3/2)
 *
 * @param radiusM Radius, m, at least 0.00015 (below, the fit was not made).
 * @returns d in 1/s; 1/d is the `decayS` of a ring.
 * @throws {InputError} radius below 0.00015 m.
 * @see van den Doel 2005, the liquid sound model. [vandenDoel2005] in shared/base/sources.ts
 * @example bubbleDecayPerS(0.003) // 87.15
 */
export function bubbleDecayPerS(radiusM: number): number {
  if (!(radiusM >= 0.00015 && radiusM < Number.POSITIVE_INFINITY))
    throw new InputError(`radiusM is ${radiusM}; must be at least 0.00015`)
  return 0.13 / radiusM + 0.0072 * radiusM ** -1.5
}

/**
 * Quality factor of a decaying tone: π·f/d. A bubble of 1 to 10 mm has 29 to 51.
 *
 * @param pitchHz Hz.
 * @param decayPerS 1/s, > 0.
 */
export function qualityFactor(pitchHz: number, decayPerS: number): number {
  return (Math.PI * pitchHz) / decayPerS
}

/**
 * Quality factor of a bubble at resonance by another route, damping measured and computed for sonar: a check on
 * `bubbleDecayPerS`, within 11 % of it from 1 to 5 mm.
 *
 *     δ = 0.0255·f_kHz^(1/3),   Q = 1/δ
 *
 * @param pitchHz Hz.
 * @see Medwin 1977 after Devin 1959. [Medwin1977] in shared/base/sources.ts
 */
export function sonarQualityFactor(pitchHz: number): number {
  return 1 / (0.0255 * Math.cbrt(pitchHz / 1000))
}
