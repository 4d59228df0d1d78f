import { median } from '../base/statistics'

/**
 * The spacing of a sweep: the median distance between neighbouring usable points, one per place.
 *
 * @param alongM Any order; places within a millimetre are one.
 * @returns m; `null` with fewer than two places.
 */
export function spacingM(alongM: readonly number[]): number | null {
  const sorted = [...alongM].sort((a, b) => a - b)
  const gaps = sorted.slice(1).flatMap((along, i) => (along - sorted[i]! > 1e-3 ? [along - sorted[i]!] : []))
  return gaps.length === 0 ? null : median(gaps)
}

/**
 * Places along the line where a source is tried: the line plus two spacings past each end, evenly, at most a twentieth
 * of a spacing apart.
 *
 * @param range First and last place of the line, m.
 * @param mostCount Never more places than this, which is a thousand spacings; on longer lines the step grows.
 */
export function searchGrid(range: readonly [number, number], spacing: number, mostCount = 20_000): Float64Array {
  const first = range[0] - 2 * spacing
  const last = range[1] + 2 * spacing
  const count = Math.min(mostCount, Math.ceil(((last - first) / spacing) * 20) + 1)
  return Float64Array.from({ length: count }, (_, i) => first + ((last - first) * i) / (count - 1))
}
