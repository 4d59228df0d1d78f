import { describe, expect, it } from 'vitest'
import { type HeardBlock, isSettled } from '../../../shared/record/settling'

/** Blocks of a tenth of a second with these powers, the last one ending at `endS`. */
const blocks = (powers: readonly number[], endS = 10): HeardBlock[] =>
  powers.map((power, i) => ({
    atS: endS - (powers.length - 1 - i) / 10,
    durationS: 0.1,
    power,
    peak: Math.sqrt(power),
  }))

const even = (count: number, power = 1e-6) => Array.from({ length: count }, () => power)

describe('a level', () => {
  it('has settled after two even seconds, and not before', () => {
    expect(isSettled(blocks(even(20)))).toBe(true)
    expect(isSettled(blocks(even(19)))).toBe(false)
    expect(isSettled([])).toBe(false)
  })

  it('has not while a knock is in one of them, and has again once it is past', () => {
    const knocked = [...even(10), 1e-3, ...even(9)]
    expect(isSettled(blocks(knocked))).toBe(false)
    expect(isSettled(blocks([...knocked, ...even(11)]))).toBe(true)
  })

  it('has while a leak gurgles: each second has as loud a moment as the other', () => {
    const gurgle = Array.from({ length: 20 }, (_, i) => (i % 7 === 0 ? 1e-4 : 1e-6))
    expect(isSettled(blocks(gurgle))).toBe(true)
  })

  it('has not in dead silence, where nothing is plugged in', () => {
    expect(isSettled(blocks(even(30, 0)))).toBe(false)
  })

  it('does not mind how loud it is', () => {
    for (const gain of [1e-8, 1, 1e8]) {
      expect(isSettled(blocks(even(25, 1e-6 * gain)))).toBe(true)
      expect(isSettled(blocks([...even(15, 1e-6 * gain), ...even(10, 1e-5 * gain)]))).toBe(false)
    }
  })
})
