/** Degrees of freedom of the misfit's t-distribution. Chosen. */
export const CELL_FREEDOM = 5
/**
 * Square at which the weight (f + 1)/(f + z²) of a t-distributed residual is the information it carries on average,
 * (f + 1)/(f + 3): Lange, Little & Taylor 1989, from memory.
 */
export const EXPECTED_SQUARE = 3
/** What a cell counts for, since neighbouring bands err together. Calibrated on the synthetic yard. */
export const CELL_SHARE = 0.5

/** −ln of the t-density of a residual, less what is the same for all. */
export function cellCost(residualDb: number, variance: number): number {
  return (
    0.5 * ((CELL_FREEDOM + 1) * Math.log(1 + (residualDb * residualDb) / variance / CELL_FREEDOM) + Math.log(variance))
  )
}
