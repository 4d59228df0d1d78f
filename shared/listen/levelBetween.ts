import { powerToDb } from '../base/units'
import type { PowerDensity } from '../spectrum/welch'
import type { PassBand } from './passBand'

/**
 * Level of what lies between two frequencies, from a power density.
 *
 * Bins that the edges cut count by the part that lies within.
 *
 * @param band `null` for the whole spectrum.
 * @returns dBFS (a mean square of 1 reads 0); `null` without any power.
 */
export function levelBetween({ density, binWidthHz }: PowerDensity, band: PassBand | null): number | null {
  let power = 0
  for (let k = 0; k < density.length; k++) {
    const from = Math.max((k - 0.5) * binWidthHz, band?.lowHz ?? 0)
    const to = Math.min((k + 0.5) * binWidthHz, band?.highHz ?? Number.POSITIVE_INFINITY)
    if (to > from) power += density[k]! * (band === null ? binWidthHz : to - from)
  }
  return powerToDb(power)
}
