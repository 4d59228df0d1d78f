import { expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { densityQuantile, massBetween, shortestWindow } from '../../../shared/locate/window'
import { close } from '../../support/close'

const STEP_M = 0.01
const grid = (count: number) => Float64Array.from({ length: count }, (_, i) => i * STEP_M)

it('is the shortest interval that holds its share: of a triangle that round its summit (rule 8)', () => {
  const alongM = grid(401)
  const perM = alongM.map((along) => Math.max(0, 1 - Math.abs(along - 2)))
  const [low, high] = shortestWindow(alongM, perM, 0.8)
  const half = 1 - Math.sqrt(0.2)
  const because = 'the integral between grid places is joined by straight lines'
  close(low, 2 - half, { abs: STEP_M, because })
  close(high, 2 + half, { abs: STEP_M, because })
})

it('begins at the foot of a density that only falls (rule 8)', () => {
  const alongM = grid(2001)
  const perM = alongM.map((along) => Math.exp(-along))
  const [low, high] = shortestWindow(alongM, perM, 0.8)
  close(low, 0, { abs: 1e-9, because: 'the density is highest at its first place' })
  close(high, Math.log(5), { abs: 0.001, because: 'the tail past 20 m is 2e-9; trapezoids of 0.01 m' })
})

it('has the median of the density as its place (rule 8)', () => {
  const alongM = grid(2001)
  const perM = alongM.map((along) => Math.exp(-along))
  close(densityQuantile(alongM, perM, 0.5), Math.LN2, { abs: 0.001, because: 'trapezoids of 0.01 m' })
})

it('holds its share, and no interval between places of the grid is shorter, whatever the density, seeds 1 to 5 (rule 8)', () => {
  for (const seed of [1, 2, 3, 4, 5]) {
    const random = new Random(seed)
    const alongM = grid(60)
    const perM = alongM.map(() => random.uniform(0, 1) ** 4)
    const total = massBetween(alongM, perM, 0, alongM.at(-1)!)
    const [low, high] = shortestWindow(alongM, perM, 0.8)
    close(massBetween(alongM, perM, low, high) / total, 0.8, { abs: 1e-9, because: 'both join the same integral' })
    for (const [i, from] of alongM.entries()) {
      const to = alongM.find((along, k) => k > i && massBetween(alongM, perM, from, along) >= 0.8 * total)
      if (to !== undefined) expect(high - low).toBeLessThanOrEqual(to - from + 1e-9)
    }
  }
})
