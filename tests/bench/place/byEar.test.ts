import { expect, it } from 'vitest'
import { close } from '../../support/close'
import { loudestM, parabolaM } from './byEar'

const places = (...pairs: [number, number][]) => pairs.map(([alongM, levelDb]) => ({ alongM, levelDb }))

it('the loudest place is the highest level, whatever the order', () => {
  expect(loudestM(places([3, -40], [1, -30], [2, -50]))).toBe(1)
  expect(loudestM([])).toBeNull()
})

it('the parabola gives back the top of levels that follow one, with uneven gaps and in any order', () => {
  const law = (x: number) => -30 - 2.5 * (x - 2.3) ** 2
  const unordered = places([4.1, law(4.1)], [0, law(0)], [2, law(2)], [0.9, law(0.9)], [3.2, law(3.2)])
  close(parabolaM(unordered), 2.3, { abs: 1e-12, because: 'three places of a parabola' })
})

it('the parabola of even gaps is the textbook one: half a gap times (l − r)/(l − 2m + r)', () => {
  const [l, m, r] = [-34, -30, -31] as const
  const top = 5 + (0.5 * (l - r)) / (l - 2 * m + r)
  close(parabolaM(places([4, l], [5, m], [6, r])), top, { abs: 1e-12, because: 'closed form' })
})

it('the parabola falls back on the loudest place at an end, and where all are level', () => {
  expect(parabolaM(places([0, -20], [1, -30], [2, -40]))).toBe(0)
  expect(parabolaM(places([0, -20], [1, -20], [2, -20]))).toBe(0)
  expect(parabolaM([])).toBeNull()
})
