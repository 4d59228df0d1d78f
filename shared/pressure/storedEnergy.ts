import { ATMOSPHERE_PA } from '../base/units'
import { type FilledLine, lineComplianceM3PerPa, lineVolumeM3 } from './lineCompliance'
import { WATER_BULK_MODULUS_PA } from './waterProperties'

/** Why the pressure test is made with water: what a burst would let loose, J. */
export interface StoredEnergy {
  /** The line full of air, let out without heat (γ = 1.4). */
  readonly airJ: number
  /** The line full of water: of the water alone, and of water and pipe wall. */
  readonly waterJ: number
  readonly waterAndWallJ: number
}

/**
 * Energy stored in a line under pressure.
 *
 *     air:   p₁·V/(γ−1) · (1 − (p₀/p₁)^((γ−1)/γ))
 *     water: ½·V·p²/K, with the wall ½·C·p²
 *
 * @param gaugePa ≥ 0.
 * @throws {InputError} a length that is not above 0.
 * @see Textbook thermodynamics; the caution against compressed air in plastic pressure pipe is the pipe makers'
 *   associations'. [PlasticPipeAir1980] in shared/base/sources.ts
 */
export function storedEnergy(line: FilledLine, gaugePa: number): StoredEnergy {
  const volumeM3 = lineVolumeM3(line)
  const absolutePa = gaugePa + ATMOSPHERE_PA
  const gamma = 1.4
  const spent = 1 - (ATMOSPHERE_PA / absolutePa) ** ((gamma - 1) / gamma)
  return {
    airJ: ((absolutePa * volumeM3) / (gamma - 1)) * spent,
    waterJ: (0.5 * volumeM3 * gaugePa ** 2) / WATER_BULK_MODULUS_PA,
    waterAndWallJ: 0.5 * lineComplianceM3PerPa(line) * gaugePa ** 2,
  }
}
