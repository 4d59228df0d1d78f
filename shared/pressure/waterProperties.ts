/** Bulk modulus of water at 20 °C, Pa. [CRCWater] in shared/base/sources.ts */
export const WATER_BULK_MODULUS_PA = 2.19e9

/** Density of water at 20 °C, kg/m³. [CRCWater] */
export const WATER_DENSITY_KG_PER_M3 = 998.2

/** °C and volume expansion of water, 1e-4 per K, as the handbooks have them (from memory). [CRCWater] */
const EXPANSION: readonly (readonly [number, number])[] = [
  [0, -0.68],
  [4, 0],
  [5, 0.16],
  [10, 0.88],
  [15, 1.51],
  [20, 2.07],
  [25, 2.57],
  [30, 3.03],
  [40, 3.85],
  [60, 5.23],
]

/**
 * Volume expansion of water: negative below 4 °C, and at 15 °C about that of a plastic pipe.
 *
 * @param temperatureC °C; below 0 and above 60 the value at that end.
 * @returns 1/K.
 */
export function waterExpansionPerK(temperatureC: number): number {
  const at = Math.min(60, Math.max(0, temperatureC))
  const next = Math.max(
    1,
    EXPANSION.findIndex(([celsius]) => celsius >= at),
  )
  const [fromC, from] = EXPANSION[next - 1]!
  const [toC, to] = EXPANSION[next]!
  return (from + ((at - fromC) / (toC - fromC)) * (to - from)) * 1e-4
}
