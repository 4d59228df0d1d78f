import { describe, expect, it } from 'vitest'
import { holdFit, stepFits, weighedQuantile } from '../../../shared/pressure/holdFit'
import { roundedFit } from '../../../shared/pressure/roundedFit'
import { roundedLikelihood, upperTail } from '../../../shared/pressure/roundedLikelihood'
import ordinary from '../../reference/pressureReference.json'
import censored from '../../reference/roundedReference.json'
import { close } from '../../support/close'
import { everyMinute, holdTest, reading } from './holds'

const rowsOf = (steps: readonly number[]) => {
  const parts = steps.map((_, i) => i / (steps.length - 1))
  return {
    steps: Float64Array.from(steps),
    counts: Float64Array.from(steps, () => 1),
    columns: [Float64Array.from(parts, () => 1), Float64Array.from(parts, (part) => -part)],
  }
}

describe('the likelihood of a rounded reading', () => {
  it('has the tails of the normal distribution as SciPy has them', () => {
    for (const { z, tail } of ordinary.upper_tails) {
      close(upperTail(z), tail, { rel: 1.3e-7, because: 'the approximation of Numerical Recipes is that good' })
    }
  })

  it('is certain well within the step and hopeless well outside, and smooth between (numeric integral)', () => {
    close(roundedLikelihood(0.06).beyond(0), 0, { abs: 1e-12, because: 'eight deviations to either edge' })
    for (const noise of [0.1, 0.35, 1]) {
      for (const off of [0, 0.3, 0.5, 0.9, 1.4]) {
        let sum = 0
        for (let i = 0; i < 2000; i++) {
          const x = off - 0.5 + (i + 0.5) / 2000
          sum += Math.exp(-0.5 * (x / noise) ** 2) / (noise * Math.sqrt(2 * Math.PI)) / 2000
        }
        const { table, beyond } = roundedLikelihood(noise)
        close(beyond(off), Math.log(sum), { abs: 1e-3, because: 'two thousand slices, and log of 1e-19' })
        close(table[Math.round(off * 128)], beyond(Math.round(off * 128) / 128), { abs: 0, because: 'its own place' })
      }
    }
    const far = roundedLikelihood(0.06).beyond
    expect(far(30)).toBeLessThan(far(20))
    expect(Number.isFinite(far(1e6))).toBe(true)
  })
})

describe('the regression of rounded readings', () => {
  it('agrees with that of intervals in R', () => {
    // survreg of R's survival package, interval2: the most likely place and its error from the curvature.
    for (const { steps, start_steps, fall_steps, fall_error_steps } of censored.fits) {
      const { mean, covariance } = roundedFit(rowsOf(steps))
      close(mean[1], fall_steps, { abs: 0.12 * fall_error_steps, because: 'a mean beside a mode of 41 readings' })
      close(mean[0], start_steps, { abs: 0.12 * fall_error_steps, because: 'the same' })
      close(Math.sqrt(covariance[3]!), fall_error_steps, {
        rel: 0.08,
        because: "R's error leaves out that the noise is not known either: Student's against normal, 39 freedoms",
      })
    }
  })

  it('is ordinary regression for a gauge much finer than its noise: slope and 95 % interval of SciPy', () => {
    for (const { times_s, values, slope_per_s, slope_low_per_s, slope_high_per_s } of ordinary.regressions) {
      const test = holdTest(
        times_s.map((timeS, i) => reading(timeS, values[i]!)),
        { resolution: 0.01 },
      )
      const { fallKpaPerMin, band, durationS } = holdFit(test, { ...stepFits(test)!, bent: [] })
      const psiPerS = (kpaPerMin: number) => -kpaPerMin / 6.894757 / 60
      const width = slope_high_per_s - slope_low_per_s
      const because = 'the lattice, the noise in steps of the root of three, and a hundredth of a psi of rounding'
      close(psiPerS(fallKpaPerMin.value), slope_per_s, { abs: 0.01 * width, because })
      close(psiPerS(fallKpaPerMin.high), slope_low_per_s, { abs: 0.04 * width, because })
      close(psiPerS(fallKpaPerMin.low), slope_high_per_s, { abs: 0.04 * width, because })
      expect([band[0]!.timeS, band.at(-1)!.timeS]).toEqual([0, durationS])
    }
  })

  it('knows that equal readings still hide up to a step (closed form)', () => {
    // All readings equal and no noise: start and end each anywhere in the step, so the fall has a triangle from -1 to 1.
    const { mean, covariance, coefficients, weights } = roundedFit(rowsOf(Array.from({ length: 31 }, () => 100)))
    close(mean[1], 0, { abs: 0.01, because: 'symmetry' })
    close(Math.sqrt(covariance[3]!), Math.sqrt(1 / 6), {
      rel: 0.15,
      because: 'the noise is not known, which rounds the triangle off',
    })
    const most = weighedQuantile(coefficients[1]!, weights, 0.99)
    expect(most).toBeGreaterThan(0.6)
    expect(most).toBeLessThan(1)
  })

  it('turns with the sign of the fall', () => {
    const steps = [100, 100, 99, 99, 98, 98, 98, 97]
    const down = roundedFit(rowsOf(steps))
    const up = roundedFit(rowsOf(steps.map((step) => 200 - step)))
    close(up.mean[1], -down.mean[1]!, { abs: 0.02, because: 'the lattice is laid anew' })
    close(up.covariance[3], down.covariance[3]!, { rel: 0.03, because: 'the same' })
  })

  it('refuses what cannot be fitted', () => {
    expect(() => roundedFit(rowsOf([1]))).toThrow('1 rows for 2 coefficients')
    const same = rowsOf([1, 2, 3])
    expect(() => roundedFit({ ...same, columns: [same.columns[0]!, same.columns[0]!] })).toThrow('cannot be told apart')
    expect(stepFits(holdTest(everyMinute([10, 10])))).toBeNull()
    expect(() => stepFits(holdTest(everyMinute([10, 10, 10]), { resolution: 0 }))).toThrow('resolution is 0')
  })
})
