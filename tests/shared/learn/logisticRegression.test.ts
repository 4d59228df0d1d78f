import { describe, expect, it } from 'vitest'
import { InputError } from '../../../shared/base/errors'
import { logisticRegression, logOdds, probabilityOf } from '../../../shared/learn/logisticRegression'
import reference from '../../reference/learnReference.json'
import { close } from '../../support/close'

const rows = reference.rows.map((row) => Float64Array.from(row))
const isLeak = reference.labels.map((label) => label === 1)

describe('logistic regression', () => {
  it("finds the coefficients that scikit-learn finds on Fisher's irises, weighed and not [Fisher1936]", () => {
    for (const fit of reference.fits) {
      const found = logisticRegression({ rows, isLeak, ...(fit.weights && { weights: fit.weights }) }, fit.penalty)
      const because = 'both run to the end of a nearly flat valley'
      close(found.intercept, fit.intercept, { abs: 1e-6, because })
      for (const [i, coefficient] of fit.coefficients.entries()) {
        close(found.weights[i], coefficient, { abs: 1e-6, because })
      }
    }
  })

  it('gives the frequency itself where nothing but the intercept speaks (closed form)', () => {
    const flat = Array.from({ length: 8 }, () => Float64Array.of(0))
    const fit = logisticRegression({ rows: flat, isLeak: [true, true, false, false, false, false, false, false] }, 1)
    close(probabilityOf(logOdds(fit, [0])), 0.25, { abs: 1e-9, because: 'two of eight' })
  })

  it('stays finite where a line parts both kinds cleanly', () => {
    const parted = [-2, -1, 1, 2].map((x) => Float64Array.of(x))
    const fit = logisticRegression({ rows: parted, isLeak: [false, false, true, true] }, 0.01)
    expect(Number.isFinite(fit.weights[0]!)).toBe(true)
    expect(probabilityOf(logOdds(fit, [2]))).toBeGreaterThan(0.98)
  })

  it('refuses one class, no penalty, ragged rows and numbers that are none', () => {
    const two = [Float64Array.of(1), Float64Array.of(2)]
    expect(() => logisticRegression({ rows: two, isLeak: [true, true] }, 1)).toThrow(InputError)
    expect(() => logisticRegression({ rows: two, isLeak: [true, false] }, 0)).toThrow(/penalty is 0/)
    expect(() => logisticRegression({ rows: [two[0]!, Float64Array.of(1, 2)], isLeak: [true, false] }, 1)).toThrow(
      /row 1 has 2 numbers/,
    )
    expect(() =>
      logisticRegression({ rows: [two[0]!, Float64Array.of(Number.NaN)], isLeak: [true, false] }, 1),
    ).toThrow(/row 1 holds/)
    expect(() => logisticRegression({ rows: two, isLeak: [true] }, 1)).toThrow(/2 rows with 1 labels/)
  })
})
