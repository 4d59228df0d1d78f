import { describe, expect, it } from 'vitest'
import { locate } from '../../../shared/locate/locate'
import { doubtingEnds } from '../../../shared/locate/scanLine'
import { searchGrid } from '../../../shared/locate/searchGrid'
import { massBetween } from '../../../shared/locate/window'
import { close } from '../../support/close'
import { idealSweep, NO_LINE } from '../../support/idealSweep'

const LAST_M = 9
const sweep = {
  count: 10,
  spacingM: 1,
  depthM: 0.5,
  overFloorDb: 20,
  air: ['on', 'off'] as const,
  gainSdDb: 1,
  scatterDb: 0.5,
}

describe('the ends of a told line (rule 8)', () => {
  it('hold the place: a leak at an end is not put a quarter of a spacing past it', () => {
    for (const leakAlongM of [0, LAST_M]) {
      const { line, soundings } = idealSweep({ ...sweep, leakAlongM })
      const { sources } = locate({ line, soundings })
      const { alongM, windowM } = sources[0]!
      close(alongM, leakAlongM, { abs: 0.2, because: 'a fifth of the spacing' })
      expect(windowM[0]).toBeGreaterThan(-0.25)
      expect(windowM[1]).toBeLessThan(LAST_M + 0.25)
    }
  })

  it('are doubted where it is asked whether the sound comes from past them (rule 9)', () => {
    const frame = { range: [0, LAST_M] as const, spacingM: 1, grid: searchGrid([0, LAST_M], 1) }
    // A density that falls past the end as the prior does, calmed: to 1/e within 0.05 of a spacing over 0.85.
    const perM = normalised(frame.grid, (alongM) =>
      alongM < 8 ? 0 : Math.exp((-Math.max(0, alongM - LAST_M) * 0.85) / 0.05),
    )
    const freed = normalised(frame.grid, (alongM) =>
      alongM < 8 ? 0 : Math.exp((-Math.max(0, alongM - LAST_M) * 0.85) / 0.2),
    )
    const past = (density: Float64Array) => massBetween(frame.grid, density, LAST_M, LAST_M + 2)
    const doubted = doubtingEnds({ ...frame, line: { ...NO_LINE, lengthM: LAST_M } }, perM)
    close(past(doubted), past(freed), { rel: 1e-9, because: 'the same density with the other fall' })
    expect(past(doubted)).toBeGreaterThan(2 * past(perM))
    expect(doubtingEnds({ ...frame, line: NO_LINE }, perM)).toBe(perM)
  })
})

function normalised(grid: Float64Array, densityAt: (alongM: number) => number): Float64Array {
  const raw = grid.map(densityAt)
  const total = raw.reduce((sum, each) => sum + each, 0) * (grid[1]! - grid[0]!)
  return raw.map((each) => each / total)
}
