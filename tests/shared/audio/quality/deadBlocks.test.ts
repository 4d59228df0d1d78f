import { expect, it } from 'vitest'
import { clipScan } from '../../../../shared/audio/quality/clipScan'
import { deadBlocks } from '../../../../shared/audio/quality/deadBlocks'
import { noise } from '../sounds'

const STEP = 2 ** -15
const dead = (samples: Float32Array, step = STEP) => deadBlocks(clipScan(samples, 48_000), step)

it('a hole in sound is dead and a hole, wherever it lies', () => {
  for (const [from, to] of [
    [0, 48_000],
    [96_000, 144_000],
    [144_000, 192_000],
  ] as const) {
    expect(dead(noise('hole', 0.01, 4).fill(0, from, to))).toEqual({ share: 0.25, holeShare: 0.25 })
  }
})

it('a sound that dies away leaves dead blocks but no hole', () => {
  const dying = noise('dying', 0.1, 4).map((x, i) => Math.round((x * Math.exp(-i / 4800)) / STEP) * STEP)
  const { share, holeShare } = dead(dying)
  expect(share).toBeGreaterThan(0.7)
  expect(holeShare).toBe(0)
})

it('a short gap is no hole, and a dead clip has none', () => {
  expect(dead(noise('gap', 0.01, 1).fill(0, 4800, 9120)).holeShare).toBe(0)
  expect(dead(new Float32Array(48_000))).toEqual({ share: 1, holeShare: 0 })
  expect(dead(new Float32Array(0))).toEqual({ share: 0, holeShare: 0 })
})

it('dither is dead and noise of one step is not', () => {
  expect(dead(noise('dither', 0.5 * STEP, 1)).share).toBeGreaterThan(0.95)
  expect(dead(noise('one', STEP, 1)).share).toBe(0)
})
