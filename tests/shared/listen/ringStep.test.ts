import { describe, expect, it } from 'vitest'
import { ringStep } from '../../../shared/listen/ringStep'

const rings = [0.5, 1.2, 3].map((timeS) => ({ timeS, pitchHz: 600, decayS: 0.01, tonality: 0.8, strengthDb: 12 }))
const next = (timeS: number) => ringStep(rings, timeS, 'next')?.timeS
const previous = (timeS: number) => ringStep(rings, timeS, 'previous')?.timeS

describe('from ring to ring', () => {
  it('goes to the next and the previous one', () => {
    expect(next(0.6)).toBe(1.2)
    expect(previous(2)).toBe(1.2)
  })

  it('leaves a ring it stands on', () => {
    expect(next(1.2)).toBe(3)
    expect(previous(1.2)).toBe(0.5)
  })

  it('goes round at either end', () => {
    expect(next(3.5)).toBe(0.5)
    expect(previous(0.2)).toBe(3)
  })

  it('visits every ring once in a round', () => {
    const visited = [next(0)!]
    for (let i = 1; i < rings.length; i++) visited.push(next(visited.at(-1)!)!)
    expect(visited).toEqual([0.5, 1.2, 3])
  })

  it('has nowhere to go without rings', () => {
    expect(ringStep([], 1, 'next')).toBeNull()
    expect(ringStep([], 1, 'previous')).toBeNull()
  })
})
