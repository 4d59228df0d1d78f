import { quantile } from '../base/statistics'
import { type Scaling, scaled } from './scaling'

/** How far a clip lies from the middle of the training clips: rms over the features, in their standard deviations. */
export function distance(scaling: Scaling, values: readonly (number | null)[]): number {
  const row = scaled(scaling, values)
  return Math.sqrt(row.reduce((sum, value) => sum + value * value, 0) / Math.max(1, row.length))
}

/** What 99 of 100 training clips stay within. */
export function usualDistance(scaling: Scaling, rows: readonly (readonly (number | null)[])[]): number {
  return quantile(
    rows.map((row) => distance(scaling, row)),
    0.99,
  )
}
