import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import type { Parts } from '../../../shared/synth/clipSounds'
import { framePowers } from '../../../shared/synth/framePowers'
import { EVIDENCE_BANDS, GRID_COUNT, onGrid } from '../../../shared/synth/grid'
import { addNuisance } from '../../../shared/synth/nuisances/addNuisance'
import { addHandling } from '../../../shared/synth/spoils'
import { NUISANCES, type Nuisance } from '../../../shared/synth/yard'

function alone(add: (parts: Parts, random: Random) => void): {
  low: number
  middle: number
  high: number
  perFrame: number[]
} {
  const sums = { low: 0, middle: 0, high: 0, perFrame: [] as number[] }
  for (let seed = 0; seed < 12; seed++) {
    const parts: Parts = {
      steadyPsd: new Float64Array(GRID_COUNT),
      swelling: [],
      rings: [],
      tones: [],
      chirps: [],
      voices: [],
    }
    add(parts, new Random(`nuisance ${seed}`))
    const { noise, tonal } = framePowers(parts, 6)
    for (const [b, { midHz }] of EVIDENCE_BANDS.entries()) {
      const frames = noise[b]!.map((power, f) => power + tonal[b]![f]!)
      sums[midHz < 300 ? 'low' : midHz < 2400 ? 'middle' : 'high'] += frames.reduce((a, v) => a + v, 0) / frames.length
      // The bands from 500 Hz on share their frames.
      if (seed === 0 && b >= 9)
        for (const [f, power] of frames.entries()) sums.perFrame[f] = (sums.perFrame[f] ?? 0) + power
    }
  }
  return sums
}

const clip = (random: Random) => {
  const one = onGrid(() => 1)
  return { durationS: 6, ambientPower: 1e-6, ground: one, air: one, random }
}
const nuisance = (name: Nuisance) => alone((parts, random) => addNuisance(parts, name, clip(random)))

describe('nuisances', () => {
  it.each(NUISANCES)('%s are heard', (name) => {
    const { low, middle, high } = nuisance(name)
    expect(low + middle + high).toBeGreaterThan(0)
  })

  it.each<Nuisance>(['footsteps', 'gusts', 'traffic', 'strokes'])('%s are low', (name) => {
    const { low, middle, high } = nuisance(name)
    expect(low).toBeGreaterThan(3 * (middle + high))
  })

  it('birds whistle above 2.5 kHz only', () => {
    const { low, middle, high } = nuisance('birds')
    expect(low + middle).toBeLessThan(1e-3 * high)
  })

  it('voices fill the middle', () => {
    const { middle, high } = nuisance('voices')
    expect(middle).toBeGreaterThan(10 * high)
  })

  it('footsteps come and go, handling thumps for most of the time', () => {
    const loudShare = (perFrame: number[]) =>
      perFrame.filter((p) => p > 1e-4 * Math.max(...perFrame)).length / perFrame.length
    expect(loudShare(nuisance('footsteps').perFrame)).toBeLessThan(0.4)
    expect(loudShare(alone((parts, random) => addHandling(parts, clip(random))).perFrame)).toBeGreaterThan(0.7)
  })
})
