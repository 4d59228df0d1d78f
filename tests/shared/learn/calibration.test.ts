import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { brierScore, calibrate, calibrated, calibrationCurve } from '../../../shared/learn/calibration'
import { probabilityOf } from '../../../shared/learn/logisticRegression'
import { countAt, operatingPoint } from '../../../shared/learn/operatingPoint'
import reference from '../../reference/learnReference.json'
import { close } from '../../support/close'

const { probability, brier, calibration_happened, calibration_said } = reference.two_features
const isLeak = reference.labels.map((label) => label === 1)

describe('what a probability is worth', () => {
  it('has the Brier score and the calibration curve of scikit-learn [Brier1950]', () => {
    close(brierScore(probability, isLeak), brier, { abs: 1e-12, because: 'sums' })
    const bins = calibrationCurve(probability, isLeak, 5).filter(({ clips }) => clips > 0)
    expect(bins.map(({ clips }) => clips).reduce((a, b) => a + b)).toBe(100)
    for (const [i, bin] of bins.entries()) {
      close(bin.happened, calibration_happened[i]!, { abs: 1e-12, because: 'counting' })
      close(bin.said, calibration_said[i]!, { abs: 1e-12, because: 'sums' })
    }
  })

  it('undoes odds that are twice too sure [Platt1999]', () => {
    const random = new Random('too sure')
    const true0dds = Array.from({ length: 4000 }, () => random.normal(0, 2))
    const came = true0dds.map((odds) => random.chance(probabilityOf(odds)))
    const fit = calibrate(
      true0dds.map((odds) => 2 * odds + 1),
      came,
    )
    close(fit.slope, 0.5, { abs: 0.04, because: 'four thousand draws: standard error 0.012' })
    close(calibrated(fit, 1), 0.5, { abs: 0.04, because: 'the same' })
  })
})

describe('where the detector says leak', () => {
  it('is the highest threshold that misses no more than allowed', () => {
    const said = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95]
    const leaks = said.map((p) => p > 0.25 && p !== 0.5)
    const point = operatingPoint(said, leaks, 0.15)
    expect(point).toEqual({ threshold: 0.4, hits: 6, misses: 1, falseAlarms: 1, rightlyNot: 2 })
    expect(operatingPoint(said, leaks, 0)).toMatchObject({ threshold: 0.3, misses: 0 })
    expect(countAt(said, leaks, 2)).toMatchObject({ hits: 0, misses: 7 })
  })
})
