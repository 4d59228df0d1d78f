import { describe, expect, it } from 'vitest'
import { loopBetween, playPosition, SHORTEST_LOOP_S } from '../../../shared/listen/playPosition'
import { close } from '../../support/close'

describe('where a clip is', () => {
  const durationS = 5
  const loop = { fromS: 1, toS: 2.5 }

  it('moves with the time and stays at the end', () => {
    expect(playPosition(1, 2, { loop: null, durationS })).toBe(3)
    expect(playPosition(1, 9, { loop: null, durationS })).toBe(5)
  })

  it('goes round in a loop', () => {
    close(playPosition(1.2, 1, { loop, durationS }), 2.2, { abs: 1e-12, because: 'not at the end yet' })
    close(playPosition(1.2, 1.4, { loop, durationS }), 1.1, { abs: 1e-12, because: '0.1 s past the end' })
    close(playPosition(1.2, 1.4 + 3 * 1.5, { loop, durationS }), 1.1, { abs: 1e-12, because: 'three rounds more' })
  })

  it('runs into a loop from before it, and jumps into it from behind', () => {
    close(playPosition(0, 0.5, { loop, durationS }), 0.5, { abs: 1e-12, because: 'before the loop' })
    close(playPosition(4, 0, { loop, durationS }), 1, { abs: 1e-12, because: 'its start' })
    close(playPosition(4, 0.7, { loop, durationS }), 1.7, { abs: 1e-12, because: '0.7 s on from its start' })
  })

  it('is not before its offset when the clock has not begun', () => {
    expect(playPosition(1, -0.1, { loop: null, durationS })).toBe(1)
  })
})

describe('a loop', () => {
  it('is in order however it was dragged, and within the clip', () => {
    expect(loopBetween(3, 1, 5)).toEqual({ fromS: 1, toS: 3 })
    expect(loopBetween(-1, 9, 5)).toEqual({ fromS: 0, toS: 5 })
  })

  it('is not shorter than a fifth of a second, at the end of a clip neither', () => {
    expect(loopBetween(2, 2.01, 5)).toEqual({ fromS: 2, toS: 2 + SHORTEST_LOOP_S })
    expect(loopBetween(5, 5, 5)).toEqual({ fromS: 5 - SHORTEST_LOOP_S, toS: 5 })
  })

  it('is none in a clip that is shorter', () => {
    expect(loopBetween(0, 0.1, 0.1)).toBeNull()
  })
})
