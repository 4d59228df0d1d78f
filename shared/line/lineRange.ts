import type { Line } from './line'

/**
 * From where to where the line runs.
 *
 * @param pointAlongsM Distances along of the points, m; needed when no length was told.
 * @returns 0 to the length; without a length the range of the points; `null` without either. m along.
 */
export function lineRange(
  line: Pick<Line, 'lengthM'>,
  pointAlongsM: readonly number[],
): { readonly fromM: number; readonly toM: number } | null {
  if (line.lengthM !== null) return { fromM: 0, toM: line.lengthM }
  if (pointAlongsM.length === 0) return null
  return {
    fromM: pointAlongsM.reduce((low, alongM) => Math.min(low, alongM)),
    toM: pointAlongsM.reduce((high, alongM) => Math.max(high, alongM)),
  }
}
