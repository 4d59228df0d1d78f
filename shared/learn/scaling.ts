import { mean, standardDeviation } from '../base/statistics'

/** Where each feature lies in the training clips and how far it scatters. */
export interface Scaling {
  readonly mean: Float64Array
  /** > 0; 1 for a feature that never changes. */
  readonly sd: Float64Array
}

/** Cut to so many standard deviations, so that one odd clip does not decide alone. Chosen. */
const MOST_SD = 5

/** Learnt from rows with gaps; a feature that no row has stands at 0 with 1. */
export function learnScaling(rows: readonly (readonly (number | null)[])[]): Scaling {
  const columns = rows[0]?.length ?? 0
  const at = (i: number) => rows.flatMap((row) => row[i] ?? [])
  const middle = Float64Array.from({ length: columns }, (_, i) => (at(i).length === 0 ? 0 : mean(at(i))))
  const sd = Float64Array.from({ length: columns }, (_, i) => {
    const spread = at(i).length === 0 ? 0 : standardDeviation(at(i))
    return spread > 1e-9 * Math.max(1, Math.abs(middle[i]!)) ? spread : 1
  })
  return { mean: middle, sd }
}

/** In standard deviations from the mean, cut at five; what is missing stands at the mean. */
export function scaled({ mean: middle, sd }: Scaling, row: readonly (number | null)[]): Float64Array {
  return Float64Array.from(middle, (centre, i) => {
    const value = row[i] ?? null
    return value === null ? 0 : Math.min(MOST_SD, Math.max(-MOST_SD, (value - centre) / sd[i]!))
  })
}
