import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Clip } from '../../../shared/audio/clip'
import { strongestChannel } from '../../../shared/audio/strongestChannel'

const clipOf = (...channels: number[][]): Clip => ({
  channels: channels.map((samples) => Float32Array.from(samples)),
  sampleRateHz: 48_000,
  encoding: { kind: 'pcm', bits: 16 },
  problems: [],
})

it('is the one with most energy, wherever it stands', () => {
  expect(strongestChannel(clipOf([0.1, -0.1], [0.5, -0.5], [0.2, -0.2]))).toBe(1)
})

it('takes no offset for sound', () => {
  expect(strongestChannel(clipOf([0.9, 0.9, 0.9], [0.01, -0.01, 0.01]))).toBe(1)
  expect(strongestChannel(clipOf([0.901, 0.9, 0.901, 0.9], [0.01, -0.01, 0.01, -0.01]))).toBe(1)
})

it('is the first of equal ones, and the only one', () => {
  expect(strongestChannel(clipOf([0.1, -0.1], [-0.1, 0.1]))).toBe(0)
  expect(strongestChannel(clipOf([0, 0], [0, 0]))).toBe(0)
  expect(strongestChannel(clipOf([0.3]))).toBe(0)
})

it('does not change when a constant is added or the gain of all is changed (seed 31)', () => {
  const samples = fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 8, maxLength: 8 })
  fc.assert(
    fc.property(samples, samples, fc.integer({ min: -50, max: 50 }), (left, right, offset) => {
      const plain = strongestChannel(clipOf(left, right))
      expect(
        strongestChannel(
          clipOf(
            left.map((x) => x + offset),
            right,
          ),
        ),
      ).toBe(plain)
      expect(
        strongestChannel(
          clipOf(
            left.map((x) => x / 64),
            right.map((x) => x / 64),
          ),
        ),
      ).toBe(plain)
    }),
    { seed: 31 },
  )
})
