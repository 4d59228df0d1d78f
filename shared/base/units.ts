/** Metres in an international foot; exact by definition (1959). [NIST811] in sources.ts */
export const METRES_PER_FOOT = 0.3048

/** Standard atmosphere in pascals; exact by definition. [NIST811] in sources.ts */
export const ATMOSPHERE_PA = 101_325

/** Pascals in a pound-force per square inch: 0.45359237 kg under standard gravity on (25.4 mm)². [NIST811] in sources.ts */
export const PASCALS_PER_PSI = (0.45359237 * 9.80665) / 0.0254 ** 2

/** Standard gravity in m/s², exact by definition. [NIST811] in sources.ts */
export const GRAVITY_M_PER_S2 = 9.80665

/** Decibels in a neper: 20·log10(e). */
export const DB_PER_NEPER = 20 * Math.LOG10E

/**
 * Level of a power against 1.
 *
 * @param power Any linear power, ≥ 0.
 * @returns 10·log10(power) in dB; `null` for a power of 0, which has no level.
 */
export function powerToDb(power: number): number | null {
  return power > 0 ? 10 * Math.log10(power) : null
}

/** Power of a level: 10^(levelDb/10). */
export function dbToPower(levelDb: number): number {
  return 10 ** (levelDb / 10)
}
