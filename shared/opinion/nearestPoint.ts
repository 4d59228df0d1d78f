/**
 * The point nearest to a place along the line.
 *
 * @param points With their places, m; of two as near the one with the smaller number.
 * @returns `null` where there is no point.
 */
export function nearestPoint(
  alongM: number,
  points: readonly { readonly point: number; readonly alongM: number }[],
): number | null {
  const byDistance = [...points].sort(
    (a, b) => Math.abs(a.alongM - alongM) - Math.abs(b.alongM - alongM) || a.point - b.point,
  )
  return byDistance[0]?.point ?? null
}
