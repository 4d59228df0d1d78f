import { expect, it } from 'vitest'
import { InputError } from '../../../shared/base/errors'
import { Random } from '../../../shared/base/random'
import {
  chiSquaredOverDofQuantile,
  logSumExp,
  median,
  normalQuantile,
  quantile,
  robustSpread,
  standardDeviation,
} from '../../../shared/base/statistics'
import { close } from '../../support/close'

it('takes quantiles as R and NumPy do by default', () => {
  // R 4.2: quantile(c(1, 2, 4, 8), c(0.1, 0.5, 0.9)) → 1.3 3.0 6.8
  const values = [8, 1, 4, 2]
  close(quantile(values, 0.1), 1.3, { abs: 1e-12, because: 'linear interpolation is exact here' })
  close(quantile(values, 0.5), 3, { abs: 1e-12, because: 'linear interpolation is exact here' })
  close(quantile(values, 0.9), 6.8, { abs: 1e-12, because: 'linear interpolation is exact here' })
  expect(values).toEqual([8, 1, 4, 2])
})

it('refuses a quantile of nothing and a probability outside 0 to 1', () => {
  expect(() => quantile([], 0.5)).toThrow(InputError)
  expect(() => quantile([1], 1.1)).toThrow('1.1')
  expect(() => quantile([1], Number.NaN)).toThrow(InputError)
})

it('has the middle, the spread and the robust spread of a small sample', () => {
  expect(median([3, 1, 2])).toBe(2)
  close(standardDeviation([2, 4, 4, 4, 5, 5, 7, 9]), Math.sqrt(32 / 7), { rel: 1e-12, because: 'closed form' })
  close(robustSpread([1, 2, 3, 4, 1000]), 1.4826, { rel: 1e-12, because: 'median deviation of 1 times 1.4826' })
})

it('gives the table values of the normal distribution', () => {
  // Standard normal table: 0.975 → 1.959964, 0.9 → 1.281552, 0.001 → -3.090232 (any handbook).
  close(normalQuantile(0.975), 1.959963985, { abs: 1e-8, because: 'relative error of the approximation is 1.2e-9' })
  close(normalQuantile(0.9), 1.281551566, { abs: 1e-8, because: 'as above' })
  close(normalQuantile(0.001), -3.090232306, { abs: 1e-8, because: 'as above, in the tail' })
  close(normalQuantile(0.999), 3.090232306, { abs: 1e-8, because: 'symmetry' })
  close(normalQuantile(0.5), 0, { abs: 1e-12, because: 'symmetry' })
})

it('gives chi-squared quantiles within a hundredth of the table', () => {
  // Chi-squared table: 10 degrees of freedom, 0.9 → 15.987, 0.1 → 4.865; 4 degrees, 0.5 → 3.357 (any handbook).
  close(chiSquaredOverDofQuantile(0.9, 10) * 10, 15.987, { rel: 0.01, because: 'Wilson and Hilferty is a fit' })
  close(chiSquaredOverDofQuantile(0.1, 10) * 10, 4.865, { rel: 0.01, because: 'as above' })
  close(chiSquaredOverDofQuantile(0.5, 4) * 4, 3.357, { rel: 0.01, because: 'as above' })
})

it('adds logarithms without overflow', () => {
  close(logSumExp([1000, 1000]), 1000 + Math.LN2, { rel: 1e-14, because: 'closed form' })
  expect(logSumExp([])).toBe(Number.NEGATIVE_INFINITY)
})

it('draws the same numbers from the same seed and others from another', () => {
  const draw = (seed: number | string) =>
    Array.from(
      { length: 5 },
      (
        (random) => () =>
          random.uint32()
      )(new Random(seed)),
    )
  expect(draw(7)).toEqual(draw(7))
  expect(draw(7)).not.toEqual(draw(8))
  expect(draw('7')).not.toEqual(draw('8'))
})

it('draws uniform and normal numbers with the right mean and spread (seed 1)', () => {
  const random = new Random(1)
  const uniform = Array.from({ length: 20_000 }, () => random.uniform())
  const normal = Array.from({ length: 20_000 }, () => random.normal(3, 2))
  const meanOf = (values: number[]) => values.reduce((a, b) => a + b) / values.length
  close(meanOf(uniform), 0.5, { abs: 0.01, because: 'five standard errors of the mean' })
  close(meanOf(normal), 3, { abs: 0.07, because: 'five standard errors of the mean' })
  close(standardDeviation(normal), 2, { abs: 0.05, because: 'five standard errors' })
  expect(Math.min(...uniform)).toBeGreaterThanOrEqual(0)
  expect(Math.max(...uniform)).toBeLessThan(1)
})
