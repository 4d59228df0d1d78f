import { expect } from 'vitest'

/**
 * Asserts that a computed number is near another, with a stated tolerance and the reason for it.
 *
 * @param options `rel` (a share of the expected value) or `abs` (in its unit), and `because`: why this much.
 */
export function close(
  actual: number | null | undefined,
  expected: number,
  options: { because: string } & ({ rel: number } | { abs: number }),
): void {
  const tolerance = 'rel' in options ? Math.abs(expected) * options.rel : options.abs
  const off = typeof actual === 'number' ? Math.abs(actual - expected) : Number.NaN
  expect(off <= tolerance, `${actual} is not within ${tolerance} of ${expected} (${options.because})`).toBe(true)
}
