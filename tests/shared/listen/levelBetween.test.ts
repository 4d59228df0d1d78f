import { describe, expect, it } from 'vitest'
import { levelBetween } from '../../../shared/listen/levelBetween'
import { welch } from '../../../shared/spectrum/welch'
import { close } from '../../support/close'

const even = { density: new Float64Array(101).fill(1e-4), binWidthHz: 10, segmentCount: 1 }

describe('the level between two frequencies', () => {
  it('of an even density is density times width, to parts of a bin', () => {
    const level = levelBetween(even, { lowHz: 203, highHz: 498 })
    close(level, 10 * Math.log10(1e-4 * 295), { abs: 1e-9, because: 'closed form' })
  })

  it('of a full-scale sine is -3.01 dBFS where the band holds it', () => {
    const sine = Float32Array.from({ length: 16_000 }, (_, n) => Math.sin((2 * Math.PI * 1000 * n) / 8000))
    const density = welch(sine, 8000, { segmentLength: 1024 })!
    close(levelBetween(density, null), -3.0103, { abs: 0.01, because: 'mean square of a half' })
    close(levelBetween(density, { lowHz: 800, highHz: 1200 }), -3.0103, { abs: 0.01, because: 'Hann leaks little' })
    expect(levelBetween(density, { lowHz: 60, highHz: 500 })!).toBeLessThan(-60)
  })

  it('of nothing is none', () => {
    expect(levelBetween({ ...even, density: new Float64Array(101) }, null)).toBeNull()
    expect(levelBetween(even, { lowHz: 5000, highHz: 8000 })).toBeNull()
  })
})
