import { describe, expect, it } from 'vitest'
import { sideOrder } from '../../../shared/pressure/sideOrder'
import { close } from '../../support/close'

const part = (name: string, lengthM: number, leakChance: number) => ({ name, lengthM, leakChance })

/** Tests needed in this order, over all ways in which independent parts can leak, given that one does. */
function expectedByCounting(chances: readonly number[], order: readonly number[], knownLeak: boolean): number {
  let tests = 0
  let total = 0
  for (let ways = 0; ways < 2 ** chances.length; ways++) {
    const leaks = chances.map((_, i) => ((ways >> i) & 1) === 1)
    if (knownLeak && !leaks.includes(true)) continue
    const chance = chances.reduce((product, each, i) => product * (leaks[i] ? each : 1 - each), 1)
    const lastIsKnown = knownLeak && order.slice(0, -1).every((i) => !leaks[i])
    tests += chance * (lastIsKnown ? order.length - 1 : order.length)
    total += chance
  }
  return tests / total
}

const orders = (count: number): number[][] =>
  count === 1
    ? [[0]]
    : orders(count - 1).flatMap((order) => Array.from({ length: count }, (_, i) => order.toSpliced(i, 0, count - 1)))

describe('the order of side tests', () => {
  it('of two sides begins with the one that more likely holds', () => {
    const { order, expectedTests } = sideOrder([part('A', 5, 0.7), part('B', 5, 0.2)], true)
    expect(order).toEqual([1, 0])
    // B holds and A leaks: 0.8 · 0.7 of the 1 − 0.8 · 0.3 ways in which one leaks; then one test was enough.
    close(expectedTests, 2 - 0.56 / 0.76, { rel: 1e-12, because: 'closed form' })
  })

  it('needs no more tests than any other order (all orders counted through)', () => {
    for (const chances of [
      [0.5, 0.5],
      [0.1, 0.6, 0.3],
      [0.9, 0.05, 0.2, 0.4],
    ]) {
      const parts = chances.map((chance, i) => part(`P${i}`, 3 + i, chance))
      const best = sideOrder(parts, true)
      close(best.expectedTests, expectedByCounting(chances, best.order, true), {
        rel: 1e-12,
        because: 'counted through',
      })
      for (const order of orders(chances.length)) {
        expect(best.expectedTests).toBeLessThanOrEqual(expectedByCounting(chances, order, true) + 1e-12)
      }
    }
  })

  it('without a known leak tests every part, the one that proves most pipe first', () => {
    const parts = [part('A', 2, 0.1), part('B', 10, 0.2), part('C', 10, 0.9)]
    expect(sideOrder(parts, false)).toEqual({ order: [1, 0, 2], expectedTests: 3 })
  })

  it('refuses chances that are none', () => {
    expect(() => sideOrder([], true)).toThrow('no parts')
    expect(() => sideOrder([part('A', 1, 1.2)], true)).toThrow('A: leakChance is 1.2')
    expect(() => sideOrder([part('A', 1, 0)], true)).toThrow('no part can leak')
  })
})
