import { expect, it } from 'vitest'
import { wilsonInterval } from '../../../../shared/practice/score/wilsonInterval'
import { close } from '../../../support/close'

it.each([
  // Newcombe 1998, table I, method 3, from memory. [Newcombe1998]
  [81, 263, 0.2553, 0.3662, 5e-5],
  [15, 148, 0.0624, 0.1605, 5e-5],
  [0, 20, 0, 0.1611, 5e-5],
  [1, 29, 0.0061, 0.1718, 5e-5],
  // As the help of an open JavaScript implementation prints them; it rounds z to 1.96. [NowakWilson2013]
  [430, 474, 0.8776750858242243, 0.9301239839930541, 2e-6],
  [10, 14, 0.4535045882751561, 0.882788120898909, 1e-5],
])('the interval of %i in %i is that of the published table', (count, total, low, high, abs) => {
  const because = 'printed, or z rounded to 1.96'
  close(wilsonInterval(count, total).low, low, { abs, because })
  close(wilsonInterval(count, total).high, high, { abs, because })
})

it('mirrors, narrows with more, and widens with more confidence', () => {
  const { low, high } = wilsonInterval(3, 10)
  close(wilsonInterval(7, 10).low, 1 - high, { abs: 1e-12, because: 'rounding' })
  const more = wilsonInterval(30, 100)
  expect(more.high - more.low).toBeLessThan(high - low)
  expect(wilsonInterval(3, 10, 0.99).high).toBeGreaterThan(high)
})

it('refuses more than all, and none at all', () => {
  expect(() => wilsonInterval(4, 3)).toThrow('count is 4')
  expect(() => wilsonInterval(0, 0)).toThrow('total is 0')
})
