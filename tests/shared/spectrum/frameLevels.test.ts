import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { chiSquaredOverDofQuantile } from '../../../shared/base/statistics'
import { frameLevels } from '../../../shared/spectrum/frameLevels'
import { close } from '../../support/close'

const timing = { frameS: 0.1, durationS: 6 }

/** Chi-squared over its degrees of freedom, by its definition. */
function steadyPowers(random: Random, degreesOfFreedom: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, () => {
    let sum = 0
    for (let i = 0; i < degreesOfFreedom; i++) sum += random.normal() ** 2
    return sum / degreesOfFreedom
  })
}

describe('frameLevels', () => {
  it.each([
    { degreesOfFreedom: 5, count: 120 },
    { degreesOfFreedom: 5, count: 20 },
    { degreesOfFreedom: 12, count: 120 },
    { degreesOfFreedom: 60, count: 40 },
  ])('reads 1 for steady powers of mean 1 ($degreesOfFreedom degrees of freedom, $count frames)', (row) => {
    const random = new Random(row.degreesOfFreedom * 1000 + row.count)
    const runs = 1500
    let quiet = 0
    let busy = 0
    let steady = 0
    for (let run = 0; run < runs; run++) {
      const levels = frameLevels(steadyPowers(random, row.degreesOfFreedom, row.count), row.degreesOfFreedom, timing)!
      quiet += levels.quietPower / runs
      busy += levels.busyPower / runs
      steady += levels.steadyPower / runs
    }
    const rel = row.count < 40 ? 0.05 : 0.035 // 0.2 and 0.15 dB
    close(quiet, 1, { rel, because: 'the cube-root form of chi-squared, and the bend of a quantile of few frames' })
    close(busy, 1, { rel, because: 'the cube-root form of chi-squared, and the bend of a quantile of few frames' })
    close(steady, 1, { rel: 0.015, because: 'hardly anything is cut' })
  })

  it('steady leaves loud exceptions out whatever their strength', () => {
    const powers = steadyPowers(new Random(8), 30, 100)
    const before = frameLevels(powers, 30, timing)!.steadyPower
    for (const strength of [10, 1e3, 1e9]) {
      const hit = powers.map((p, i) => (i >= 40 && i < 46 ? strength * p : p))
      close(frameLevels(hit, 30, timing)!.steadyPower, before, { rel: 0.05, because: '6 of 100 frames are cut' })
    }
  })

  it('steady leaves out no more than a tenth, the loudest first', () => {
    const powers = Float64Array.from({ length: 100 }, (_, i) => (i < 30 ? 100 + i : 1))
    const expected = (Array.from({ length: 20 }, (_, i) => 100 + i).reduce((a, b) => a + b) + 70) / 90
    close(frameLevels(powers, 200, timing)!.steadyPower, expected, { rel: 1e-6, because: 'the mean of the other 90' })
  })

  it('in a short clip it leaves out as many frames as one knock touches, at most a quarter', () => {
    const powers = Float64Array.from({ length: 20 }, (_, i) => (i < 5 ? 1000 : 1))
    close(frameLevels(powers, 200, { frameS: 0.1, durationS: 1 })!.steadyPower, 1, { rel: 1e-6, because: '5 of 20' })
    const six = powers.map((p, i) => (i === 5 ? 1000 : p))
    expect(frameLevels(six, 200, { frameS: 0.1, durationS: 1 })!.steadyPower).toBeGreaterThan(60)
  })

  it('says nothing with fewer than 4 frames', () => {
    expect(frameLevels(Float64Array.of(1, 1, 1), 20, timing)).toBeNull()
  })
})

describe('the median of an averaged periodogram over its mean', () => {
  // Exact medians of the gamma distribution, K = 1, 4, 8, 16 averaged frames.
  it.each([
    { frames: 1, exact: Math.LN2 },
    { frames: 4, exact: 0.918 },
    { frames: 8, exact: 0.9587 },
    { frames: 16, exact: 0.9792 },
  ])('is $exact for $frames frames, as the correction has it', ({ frames, exact }) => {
    close(chiSquaredOverDofQuantile(0.5, 2 * frames), exact, {
      rel: frames === 1 ? 0.015 : 0.002,
      because: 'the cube-root form is made for 3 degrees of freedom and more',
    })
  })
})
