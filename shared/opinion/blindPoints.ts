import { Random } from '../base/random'

/** A point as it is shown to somebody who listens blind. */
export interface BlindPoint {
  /** Its number in the job. */
  readonly point: number
  /** The number that is shown. */
  readonly shown: number
}

/**
 * The points of a line in the order in which they are listened to blind.
 *
 * @param seed `null`: by their own numbers. Else shuffled and numbered anew from 1; the same seed gives the same order.
 */
export function blindPoints(points: readonly number[], seed: string | null): BlindPoint[] {
  const sorted = [...new Set(points)].sort((a, b) => a - b)
  if (seed === null) return sorted.map((point) => ({ point, shown: point }))
  return new Random(seed).shuffled(sorted).map((point, i) => ({ point, shown: i + 1 }))
}
