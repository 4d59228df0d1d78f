import { choleskyInPlace } from '../base/cholesky'

/**
 * Rows that scatter together made independent, each with variance 1.
 *
 *     L⁻¹·rows,   covariance = L·Lᵀ
 *
 * @param covariance Row-major, n × n, positive definite; not written to. @param rows n rows of any one length.
 * @throws {Error} when the covariance is not positive definite.
 */
export function whitened(covariance: Float64Array, rows: readonly (readonly number[])[]): number[][] {
  const n = rows.length
  const factor = covariance.slice()
  if (choleskyInPlace(factor, n) === null) throw new Error('covariance is not positive definite')
  const white: number[][] = []
  for (let i = 0; i < n; i++) {
    const row = [...rows[i]!]
    for (let k = 0; k < i; k++) {
      const share = factor[i * n + k]!
      const earlier = white[k]!
      for (let j = 0; j < row.length; j++) row[j]! -= share * earlier[j]!
    }
    white.push(row.map((value) => value / factor[i * n + i]!))
  }
  return white
}
