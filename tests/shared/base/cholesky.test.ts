import { expect, it } from 'vitest'
import { choleskyInPlace, choleskySolve } from '../../../shared/base/cholesky'
import { Random } from '../../../shared/base/random'
import { close } from '../../support/close'

it('solves a textbook system and knows its determinant', () => {
  // A = [[4, 12, -16], [12, 37, -43], [-16, -43, 98]] = L·Lᵀ with L = [[2], [6, 1], [-8, 5, 3]]; det A = 36.
  const a = Float64Array.of(4, 12, -16, 12, 37, -43, -16, -43, 98)
  close(choleskyInPlace(a, 3), Math.log(36), { rel: 1e-12, because: 'closed form' })
  expect([a[0], a[3], a[4], a[6], a[7], a[8]]).toEqual([2, 6, 1, -8, 5, 3])
  const x = Float64Array.of(4 + 24 - 48, 12 + 74 - 129, -16 - 86 + 294) // A·(1, 2, 3)
  choleskySolve(a, 3, x)
  for (const i of [0, 1, 2]) close(x[i], i + 1, { abs: 1e-9, because: 'condition of the matrix' })
})

it('says when a matrix is not positive definite', () => {
  expect(choleskyInPlace(Float64Array.of(1, 2, 2, 1), 2)).toBeNull()
})

it('gives back what it was made from, for random matrices (seed 3)', () => {
  const random = new Random(3)
  for (let size = 1; size <= 12; size++) {
    const b = Float64Array.from({ length: size * size }, () => random.normal())
    const a = new Float64Array(size * size)
    for (let i = 0; i < size; i++)
      for (let j = 0; j < size; j++) {
        for (let k = 0; k < size; k++) a[i * size + j]! += b[i * size + k]! * b[j * size + k]!
        if (i === j) a[i * size + j]! += 0.5
      }
    const wanted = Float64Array.from({ length: size }, () => random.normal())
    const right = Float64Array.from({ length: size }, (_, i) =>
      wanted.reduce((sum, x, j) => sum + a[i * size + j]! * x, 0),
    )
    choleskyInPlace(a, size)
    choleskySolve(a, size, right)
    for (let i = 0; i < size; i++) close(right[i], wanted[i]!, { abs: 1e-8, because: 'well conditioned' })
  }
})
