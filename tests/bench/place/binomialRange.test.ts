import { expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { binomialRange } from './binomialRange'

it('agrees with the tables of ten and twenty tosses of a fair coin', () => {
  // Tables of the binomial distribution (from memory, and by counting): P(X ≤ 1) = 0.0107, P(X ≤ 2) = 0.0547 for 10;
  // P(X ≤ 5) = 0.0207, P(X ≤ 6) = 0.0577 for 20.
  expect(binomialRange(10, 0.5, 0.95)).toEqual([2, 8])
  expect(binomialRange(20, 0.5, 0.95)).toEqual([6, 14])
})

it('holds as much as it says of counts drawn one by one', () => {
  const random = new Random('binomial range')
  const [low, high] = binomialRange(30, 0.8, 0.95)
  let inside = 0
  for (let i = 0; i < 2000; i++) {
    const count = Array.from({ length: 30 }, () => random.chance(0.8)).filter(Boolean).length
    if (count >= low && count <= high) inside++
  }
  expect(inside / 2000).toBeGreaterThan(0.94)
  expect([low, high]).not.toEqual([0, 30])
})

it('is everything for a certain thing only at its end', () => {
  expect(binomialRange(5, 1, 0.9)).toEqual([5, 5])
  expect(binomialRange(5, 0, 0.9)).toEqual([0, 0])
})
