import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import type { Parts } from '../../../shared/synth/clipSounds'
import { framePowers } from '../../../shared/synth/framePowers'
import { EVIDENCE_BANDS, GRID_COUNT, onGrid } from '../../../shared/synth/grid'
import { addNuisance } from '../../../shared/synth/nuisances/addNuisance'
import { addHandling } from '../../../shared/synth/spoils'
import { NUISANCES, type Nuisance } from '../../../shared/synth/yard'

const FRAMES = 120

function alone(add: (parts: Parts, random: Random) => void): {
  low: number
  middle: number
  high: number
  perFrame: number[]
} {
  const sums = { low: 0, middle: 0, high: 0, perFrame: new Array<number>(FRAMES).fill(0) }
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
    const { noise, tonal } = framePowers(parts, FRAMES)
    for (const [b, { midHz }] of EVIDENCE_BANDS.entries())
      for (let f = 0; f < FRAMES; f++) {
        const power = noise[b * FRAMES + f]! + tonal[b * FRAMES + f]!
        sums[midHz < 300 ? 'low' : midHz < 2400 ? 'middle' : 'high'] += power
        if (seed === 0) sums.perFrame[f]! += power
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

  it('footsteps come and go, handling never rests', () => {
    const quietest = (perFrame: number[]) => Math.min(...perFrame) / Math.max(...perFrame)
    expect(quietest(nuisance('footsteps').perFrame)).toBeLessThan(1e-4)
    expect(quietest(alone((parts, random) => addHandling(parts, clip(random))).perFrame)).toBeGreaterThan(1e-3)
  })
})
