import { expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { bandLevels } from '../../../shared/spectrum/bandLevels'
import { close } from '../../support/close'

const RATE_HZ = 16_000

/** Six seconds of white noise with one loud decaying tone in it. */
function noiseWithRing(): Float32Array {
  const random = new Random('vouched')
  const samples = Float32Array.from({ length: 6 * RATE_HZ }, () => 0.01 * random.normal())
  for (let i = 0; i < 0.1 * RATE_HZ; i++) {
    const t = i / RATE_HZ
    samples[2 * RATE_HZ + i]! += 0.5 * Math.exp(-t / 0.02) * Math.sin(2 * Math.PI * 800 * t)
  }
  return samples
}

it('leaves a loud moment out of the steady level, unless a ring vouches for it', () => {
  const samples = noiseWithRing()
  const levelOf = (vouched: Parameters<typeof bandLevels>[2]) =>
    bandLevels(samples, RATE_HZ, vouched).find((band) => Math.round(band.midHz) === 794)!
  const plain = levelOf([])
  const kept = levelOf([{ timeS: 2, pitchHz: 800, decayS: 0.02 }])
  const elsewhere = levelOf([{ timeS: 2, pitchHz: 3000, decayS: 0.02 }])
  expect(plain.levelDbFs! - plain.steadyDbFs!).toBeGreaterThan(5)
  close(kept.steadyDbFs, plain.levelDbFs!, {
    abs: 0.3,
    because: 'nothing is left out then, and frames weigh almost alike',
  })
  expect(elsewhere.steadyDbFs).toBe(plain.steadyDbFs)
  expect([kept.quietDbFs, kept.busyDbFs]).toEqual([plain.quietDbFs, plain.busyDbFs])
})
