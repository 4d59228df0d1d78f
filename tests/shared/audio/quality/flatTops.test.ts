import { expect, it } from 'vitest'
import { clipScan } from '../../../../shared/audio/quality/clipScan'
import { flatTops } from '../../../../shared/audio/quality/flatTops'

const RATE_HZ = 48_000
const tops = (samples: Float32Array, step = 2 ** -15) => flatTops(samples, clipScan(samples, RATE_HZ), step)
const sine = (hz: number) =>
  Float32Array.from({ length: RATE_HZ }, (_, i) => Math.sin((2 * Math.PI * hz * i) / RATE_HZ))

it('counts the flat part of a cut sine on both sides: 1 − (2/π)·asin(limit)', () => {
  for (const limit of [0.3, 0.5, 0.8]) {
    const { sampleShare, blockShare } = tops(sine(200).map((x) => Math.max(-limit, Math.min(limit, x))))
    expect(Math.abs(sampleShare - (1 - (2 / Math.PI) * Math.asin(limit)))).toBeLessThan(0.01)
    expect(blockShare).toBe(1)
  }
})

it('sees one side alone', () => {
  const { sampleShare } = tops(sine(200).map((x) => Math.min(0.5, x)))
  expect(Math.abs(sampleShare - 1 / 3)).toBeLessThan(0.01)
})

it('counts runs across the seam of two blocks once', () => {
  const samples = new Float32Array(RATE_HZ)
  samples.fill(0.9, 478, 484)
  expect(tops(samples).samples).toBe(6)
})

it('leaves alone what only touches its limit, and round tops however slow', () => {
  expect(tops(sine(20)).samples).toBe(0)
  expect(tops(sine(7000)).samples).toBe(0)
  const spikes = new Float32Array(RATE_HZ).map((_, i) => (i % 100 < 2 ? 1 : 0))
  expect(tops(spikes).samples).toBe(0)
  expect(tops(new Float32Array(0))).toEqual({ samples: 0, sampleShare: 0, blockShare: 0 })
})
