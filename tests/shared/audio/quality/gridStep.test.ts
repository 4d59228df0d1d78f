import { expect, it } from 'vitest'
import { gridStep } from '../../../../shared/audio/quality/gridStep'
import { noise, quantised } from '../sounds'

it('finds the step that quiet samples stand on', () => {
  for (const bits of [8, 16, 20])
    expect(gridStep(quantised(noise('grid', 4 / 2 ** (bits - 1), 1), bits))).toBe(2 ** (1 - bits))
})

it('is tiny for samples without a grid, and null for a constant or nothing', () => {
  expect(gridStep(noise('free', 0.1, 1))).toBeLessThan(1e-4)
  expect(gridStep(new Float32Array(5000).fill(0.5))).toBeNull()
  expect(gridStep(new Float32Array(0))).toBeNull()
})
