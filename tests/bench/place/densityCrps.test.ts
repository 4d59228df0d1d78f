import { expect, it } from 'vitest'
import { close } from '../../support/close'
import { densityCrps } from './densityCrps'

const grid = (from: number, to: number, steps: number) =>
  Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)

it('of a standard normal is 0.233695 at its mean and 0.602441 one deviation off', () => {
  // Closed form of Gneiting & Raftery 2007: (√2 − 1)/√π at the mean. [GneitingRaftery2007]
  const alongM = grid(-8, 8, 3200)
  const normal = alongM.map((x) => Math.exp((-x * x) / 2))
  const because = 'straight lines every 0.005 between places of the density'
  close(densityCrps(alongM, normal, 0), (Math.SQRT2 - 1) / Math.sqrt(Math.PI), { abs: 2e-6, because })
  close(densityCrps(alongM, normal, 0), 0.233695, { abs: 2e-6, because })
  close(densityCrps(alongM, normal, 1), 0.602441, { abs: 2e-6, because })
  close(densityCrps(alongM, normal, -1), 0.602441, { abs: 2e-6, because })
})

it('of an even density on 0 to 1 is y³/3 + (1 − y)³/3, and grows with the distance outside', () => {
  const exact = { rel: 1e-12, because: 'exact: the square of a straight line' }
  for (const y of [0, 0.25, 0.6, 1]) close(densityCrps([0, 0.5, 1], [3, 3, 3], y), y ** 3 / 3 + (1 - y) ** 3 / 3, exact)
  close(densityCrps([0, 1], [1, 1], 3), 1 / 3 + 2, exact)
  close(densityCrps([0, 1], [1, 1], -2), 1 / 3 + 2, exact)
})

it('of a rising density is exact too: F = x² on 0 to 1', () => {
  // ∫₀¹ x⁴ dx = 1/5 for a truth at 1.
  close(densityCrps([0, 1], [0, 2], 1), 0.2, { rel: 1e-12, because: 'three places integrate a fourth power exactly' })
})

it('of a density on all but one place comes to the distance', () => {
  const alongM = grid(0, 10, 100_000)
  const spike = alongM.map((x) => (Math.abs(x - 4) < 1e-6 ? 1 : 0))
  close(densityCrps(alongM, spike, 7), 3, { abs: 1e-4, because: 'the spike is 0.0002 wide' })
})

it('of nothing is nothing', () => {
  expect(densityCrps([0, 1], [0, 0], 0.5)).toBeNull()
})
