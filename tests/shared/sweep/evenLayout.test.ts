import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { evenLayout } from '../../../shared/sweep/evenLayout'
import { rowsFromNames } from '../../../shared/sweep/rowsFromNames'
import { close } from '../../support/close'

describe('how points lie', () => {
  it('is read off clips that were placed by a spacing (seed 5)', () => {
    const numbers = fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 2, maxLength: 20 })
    const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    const run = fc.property(numbers, metres(-5, 50), metres(0.05, 20), (points, startM, spacingM) => {
      const names = points.flatMap((point) => [`${point}-on.wav`, `${point}-off.wav`])
      const layout = evenLayout(rowsFromNames(names, { startM, spacingM }).rows)!
      const because = 'the same sum of a start and some spacings'
      close(layout.spacingM, spacingM, { rel: 1e-9, because })
      close(layout.startM, startM, { abs: 1e-9, because })
      expect([layout.firstPoint, layout.lastPoint]).toEqual([Math.min(...points), Math.max(...points)])
    })
    fc.assert(run, { seed: 5 })
  })

  it('is not even where a tape says otherwise, where numbers fall, and for one point or none', () => {
    const at = (...alongM: number[]) => alongM.map((each, i) => ({ point: i + 1, alongM: each }))
    expect(evenLayout(at(0, 1, 2.01))).toBeNull()
    expect(evenLayout(at(2, 1, 0))).toBeNull()
    expect(evenLayout(at(1, 1))).toBeNull()
    expect(evenLayout([...at(1), ...at(1)])).toBeNull()
    expect(evenLayout([])).toBeNull()
  })
})
