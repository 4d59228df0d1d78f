import { InputError } from '../base/errors'

/** What is let through to the ear, Hz. */
export interface PassBand {
  readonly lowHz: number
  readonly highHz: number
}

/** Limits of what can be chosen, Hz. */
export const PASS_BAND_LIMITS: PassBand = { lowHz: 60, highHz: 8000 }

/** The narrowest band: a third of an octave. Narrower ones ring by themselves and sound like rings. */
export const NARROWEST_RATIO = 10 ** 0.1

/**
 * A pass band from two dragged or typed frequencies: in order, within the limits, and not too narrow to be trusted.
 *
 * @param aHz, bHz Any two finite frequencies.
 * @returns Widened about its geometric middle where it is too narrow, then moved back within the limits.
 * @throws {InputError} a frequency that is not above 0.
 */
export function passBand(aHz: number, bHz: number, limits: PassBand = PASS_BAND_LIMITS): PassBand {
  if (!(aHz > 0 && bHz > 0 && aHz + bHz < Number.POSITIVE_INFINITY)) {
    throw new InputError(`pass band is ${aHz} to ${bHz} Hz; both must be above 0`)
  }
  const within = (hz: number) => Math.min(limits.highHz, Math.max(limits.lowHz, hz))
  const lowHz = within(Math.min(aHz, bHz))
  const highHz = within(Math.max(aHz, bHz))
  if (highHz / lowHz >= NARROWEST_RATIO) return { lowHz, highHz }
  const room = Math.sqrt(NARROWEST_RATIO)
  const middleHz = Math.min(limits.highHz / room, Math.max(limits.lowHz * room, Math.sqrt(lowHz * highHz)))
  return { lowHz: middleHz / room, highHz: middleHz * room }
}
