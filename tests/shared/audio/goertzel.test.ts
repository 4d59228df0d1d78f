import { expect, it } from 'vitest'
import { goertzel } from '../../../shared/audio/goertzel'
import { Random } from '../../../shared/base/random'
import { close } from '../../support/close'

it('gives (A·N/2)² for a sine on a bin, and nothing on the other bins', () => {
  const samples = Float64Array.from({ length: 200 }, (_, i) => 0.3 * Math.sin((2 * Math.PI * 7 * i) / 200 + 1))
  close(goertzel(samples, 7 / 200), 30 ** 2, { rel: 1e-9, because: 'closed form' })
  for (const bin of [1, 6, 8, 50]) expect(goertzel(samples, bin / 200)).toBeLessThan(1e-18 * 200 ** 2 * 1e6)
})

it('equals the sum that defines it, at any frequency', () => {
  const random = new Random('goertzel')
  const samples = Float64Array.from({ length: 333 }, () => random.normal())
  for (const frequency of [0, 0.01, 0.1234, 0.25, 0.4999, 0.5]) {
    let re = 0
    let im = 0
    for (const [n, x] of samples.entries()) {
      re += x * Math.cos(2 * Math.PI * frequency * n)
      im -= x * Math.sin(2 * Math.PI * frequency * n)
    }
    close(goertzel(samples, frequency), re * re + im * im, {
      rel: 1e-8,
      because: 'the recursion loses a few digits near 0',
    })
  }
})

it('of nothing is 0', () => {
  expect(goertzel(new Float64Array(0), 0.1)).toBe(0)
  expect(goertzel(new Float64Array(10), 0.1)).toBe(0)
})
