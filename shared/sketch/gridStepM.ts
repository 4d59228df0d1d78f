import { METRES_PER_FOOT } from '../base/units'

/** Lines closer than this are a tint, px. Chosen. */
const CLOSEST_PX = 22

/**
 * From line to line of a grid: 1, 2 or 5 times a power of ten in the reader's unit, as close as can still be told apart.
 *
 * @param pxPerM Scale of the picture, > 0.
 * @returns m; every fifth line may be drawn stronger, so that five steps are a round length too.
 */
export function gridStepM(pxPerM: number, unit: 'm' | 'ft'): number {
  const unitM = unit === 'ft' ? METRES_PER_FOOT : 1
  const least = CLOSEST_PX / pxPerM / unitM
  const decade = 10 ** Math.floor(Math.log10(least) + 1e-9)
  const times = [1, 2, 5, 10].find((each) => each * decade >= least * (1 - 1e-9)) ?? 10
  return times * decade * unitM
}
