import { expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { mean, normalQuantile } from '../../../shared/base/statistics'
import { close } from '../../support/close'
import { intervalScore } from './intervalScore'

it('is 50 for the 90 % window from 0 to 10 and a truth of 12', () => {
  // Width 10 and 2/0.1 times 2: the definition of Gneiting & Raftery 2007. [GneitingRaftery2007]
  close(intervalScore([0, 10], 0.9, 12), 50, { rel: 1e-12, because: 'exact but for 1 − 0.9' })
  close(intervalScore([0, 10], 0.9, -2), 50, { rel: 1e-12, because: 'the same on the other side' })
})

it('is the width for a truth inside and on the edge', () => {
  for (const truth of [0, 3, 10]) expect(intervalScore([0, 10], 0.8, truth)).toBe(10)
})

it('is better for an honest window than for a narrower or a wider one', () => {
  const random = new Random('interval score')
  const truths = Array.from({ length: 4000 }, () => random.normal())
  const scoreOf = (half: number) => mean(truths.map((truth) => intervalScore([-half, half], 0.8, truth)))
  const honest = normalQuantile(0.9)
  expect(scoreOf(honest)).toBeLessThan(scoreOf(0.7 * honest))
  expect(scoreOf(honest)).toBeLessThan(scoreOf(1.4 * honest))
})
