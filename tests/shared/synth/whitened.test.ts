import { expect, it } from 'vitest'
import { whitened } from '../../../shared/synth/whitened'
import { close } from '../../support/close'

it('of two that scatter together is the first over its deviation, and what the second has beside it', () => {
  // Variances 4 and 9, correlation 0.5: L = [[2, 0], [1.5, √6.75]], by hand.
  const covariance = Float64Array.from([4, 3, 3, 9])
  const [[first], [second]] = whitened(covariance, [[6], [5]]) as [[number], [number]]
  close(first, 3, { abs: 1e-12, because: 'exact' })
  close(second, (5 - 1.5 * 3) / Math.sqrt(6.75), { abs: 1e-12, because: 'exact' })
  expect([...covariance]).toEqual([4, 3, 3, 9])
})

it('makes rᵀ·C⁻¹·r the sum of squares', () => {
  const covariance = Float64Array.from([2, 0.3, -0.4, 0.3, 1, 0.2, -0.4, 0.2, 3])
  const r = [1, -2, 0.5]
  const white = whitened(
    covariance,
    r.map((x) => [x]),
  )
  const solved = solve3(covariance, r)
  const square = r.reduce((sum, x, i) => sum + x * solved[i]!, 0)
  close(
    white.reduce((sum, [x]) => sum + x! * x!, 0),
    square,
    { rel: 1e-12, because: 'two ways to one number' },
  )
})

it('refuses what is no covariance', () => {
  expect(() => whitened(Float64Array.from([1, 2, 2, 1]), [[1], [1]])).toThrow('positive definite')
})

/** Cramer's rule. */
function solve3(matrix: Float64Array, right: readonly number[]): number[] {
  const det = (m: ArrayLike<number>) =>
    m[0]! * (m[4]! * m[8]! - m[5]! * m[7]!) -
    m[1]! * (m[3]! * m[8]! - m[5]! * m[6]!) +
    m[2]! * (m[3]! * m[7]! - m[4]! * m[6]!)
  return right.map(
    (_, column) => det(matrix.map((x, i) => (i % 3 === column ? right[Math.floor(i / 3)]! : x))) / det(matrix),
  )
}
