/**
 * Cholesky factor of a symmetric positive definite matrix, in place.
 *
 * @param matrix Row-major, size × size; the lower triangle is read and becomes the factor L (A = L·Lᵀ); the upper is
 *               left as it is.
 * @returns ln of the determinant of A; `null` when A is not positive definite (the matrix is then spoilt).
 */
export function choleskyInPlace(matrix: Float64Array, size: number): number | null {
  let logDeterminant = 0
  for (let i = 0; i < size; i++) {
    const rowI = i * size
    for (let j = 0; j < i; j++) {
      const rowJ = j * size
      let sum = matrix[rowI + j]!
      for (let k = 0; k < j; k++) sum -= matrix[rowI + k]! * matrix[rowJ + k]!
      matrix[rowI + j] = sum / matrix[rowJ + j]!
    }
    let pivot = matrix[rowI + i]!
    for (let k = 0; k < i; k++) pivot -= matrix[rowI + k]! * matrix[rowI + k]!
    if (!(pivot > 0)) return null
    const root = Math.sqrt(pivot)
    matrix[rowI + i] = root
    logDeterminant += 2 * Math.log(root)
  }
  return logDeterminant
}

/** Solves L·Lᵀ·x = b in place of b, with the factor of `choleskyInPlace`. */
export function choleskySolve(factor: Float64Array, size: number, b: Float64Array): void {
  for (let i = 0; i < size; i++) {
    let sum = b[i]!
    for (let k = 0; k < i; k++) sum -= factor[i * size + k]! * b[k]!
    b[i] = sum / factor[i * size + i]!
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = b[i]!
    for (let k = i + 1; k < size; k++) sum -= factor[k * size + i]! * b[k]!
    b[i] = sum / factor[i * size + i]!
  }
}
