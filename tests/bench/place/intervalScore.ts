/**
 * Interval score of a window that is said to hold the truth with some probability: its width, and for a truth outside
 * 2/(1 − probability) times how far outside. Smaller is better; honest windows do best on average.
 *
 * @see Gneiting & Raftery 2007, interval score with α = 1 − probability. [GneitingRaftery2007] in shared/base/sources.ts
 */
export function intervalScore([low, high]: readonly [number, number], probability: number, truth: number): number {
  const outside = Math.max(low - truth, truth - high, 0)
  return high - low + (2 / (1 - probability)) * outside
}
