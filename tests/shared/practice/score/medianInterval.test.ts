import { expect, it } from 'vitest'
import { medianInterval } from '../../../../shared/practice/score/medianInterval'
import { close } from '../../../support/close'

const counted = (n: number) => Array.from({ length: n }, (_, i) => i + 1)

it.each([
  // Ranks of the 95 % interval in tables of binomial ranks (n = 6: 1 to 6, 9: 2 to 8, 20: 6 to 15, 50: 18 to 33). [Conover1999]
  [6, 1, 6, 0.969],
  [9, 2, 8, 0.961],
  [20, 6, 15, 0.959],
  [50, 18, 33, 0.967],
])('of %i values is between the ranks that the tables give', (n, low, high, confidence) => {
  const interval = medianInterval(counted(n))
  expect([interval.low, interval.high]).toEqual([low, high])
  close(interval.confidence, confidence, { abs: 6e-4, because: 'printed to three places' })
})

it('of few values is what they reach, and says that it is worth less', () => {
  expect(medianInterval([3, 1])).toEqual({ median: 2, low: 1, high: 3, confidence: 0.5 })
  expect(medianInterval([4])).toEqual({ median: 4, low: 4, high: 4, confidence: 0 })
  expect(() => medianInterval([])).toThrow('no values')
})
