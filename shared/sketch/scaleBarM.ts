import { METRES_PER_FOOT } from '../base/units'

const INCHES = [6, 3, 1, 0.5]

/**
 * A round length that fits a width, for a scale bar.
 *
 * @param mostM Longest that fits, > 0, m.
 * @returns 1, 2 or 5 times a power of ten in the unit, the longest that fits, m. Less than a foot is 6, 3, 1 or half an inch.
 */
export function scaleBarM(mostM: number, unit: 'm' | 'ft'): number {
  const unitM = unit === 'ft' ? METRES_PER_FOOT : 1
  const most = mostM / unitM
  const inches = unit === 'ft' && most < 1 ? INCHES.find((each) => each <= 12 * most * (1 + 1e-9)) : undefined
  if (inches !== undefined) return (inches / 12) * METRES_PER_FOOT
  const decade = 10 ** Math.floor(Math.log10(most) + 1e-9)
  const times = [5, 2, 1].find((each) => each * decade <= most * (1 + 1e-9)) ?? 1
  return times * decade * unitM
}
