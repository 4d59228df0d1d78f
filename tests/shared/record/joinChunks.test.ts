import { describe, expect, it } from 'vitest'
import { joinChunks } from '../../../shared/record/joinChunks'

const chunk = (number: number, ...channels: number[][]) => ({
  number,
  channels: channels.map((samples) => Float32Array.from(samples)),
})

describe('a recording out of its chunks', () => {
  it('is whole, whatever order they come in', () => {
    const chunks = [chunk(2, [5]), chunk(0, [1, 2]), chunk(1, [3, 4])]
    expect(joinChunks(chunks)).toEqual([Float32Array.of(1, 2, 3, 4, 5)])
  })

  it('ends before the first one that is missing: what follows a hole lies at no known time', () => {
    expect(joinChunks([chunk(0, [1]), chunk(1, [2]), chunk(3, [4])])).toEqual([Float32Array.of(1, 2)])
    expect(joinChunks([chunk(1, [2])])).toEqual([])
    expect(joinChunks([])).toEqual([])
  })

  it('has the channels that are there all through', () => {
    expect(joinChunks([chunk(0, [1], [10]), chunk(1, [2])])).toEqual([Float32Array.of(1, 2)])
    expect(joinChunks([chunk(0, [1], [10]), chunk(1, [2], [20])])).toEqual([
      Float32Array.of(1, 2),
      Float32Array.of(10, 20),
    ])
  })
})
