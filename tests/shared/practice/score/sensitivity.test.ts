import { describe, expect, it } from 'vitest'
import { fromShares, sensitivity } from '../../../../shared/practice/score/sensitivity'
import { close } from '../../../support/close'

const PRINTED = 'printed to so many places'

describe('sensitivity and criterion of shares', () => {
  it('are those of the published tables', () => {
    // The worked example of Stanislaw & Todorov 1999 (hits 20 of 25, false alarms 10 of 25), from memory. [StanislawTodorov1999]
    close(fromShares(0.8, 0.4).dPrime, 1.095, { abs: 5e-4, because: PRINTED })
    close(fromShares(0.8, 0.4).criterion, -0.294, { abs: 5e-4, because: PRINTED })
    // Two values as an open MATLAB function prints them in its help: 0.9 and 0.05 give 2.9264 and 0.1817. [KCox2014]
    close(fromShares(0.9, 0.05).dPrime, 2.9264, { abs: 5e-5, because: PRINTED })
    close(fromShares(0.9, 0.05).criterion, 0.1817, { abs: 5e-5, because: PRINTED })
    // Table A5.1 of Macmillan & Creelman, the table of z, from memory: z(0.99) = 2.326, z(0.84) = 0.994, z(0.69) = 0.496.
    close(fromShares(0.99, 0.01).dPrime, 4.652, { abs: 1.1e-3, because: 'a sum of two printed to three places' })
    close(fromShares(0.84, 0.31).dPrime, 1.49, { abs: 1.1e-3, because: 'a sum of two printed to three places' })
    close(fromShares(0.84, 0.31).criterion, -0.249, { abs: 1.1e-3, because: 'half a difference of such' })
  })
})

describe('sensitivity of counts', () => {
  it('is corrected by half a count, and finite for somebody who is always right', () => {
    // (20 + ½)/26 and (10 + ½)/26 by the tables of z: 0.7885 and 0.4038. [Hautus1995]
    close(sensitivity({ hits: 20, misses: 5, falseAlarms: 10, correctRejections: 15 }).dPrime, 0.8012 + 0.2434, {
      abs: 2e-4,
      because: 'tables of z to four places',
    })
    // (25 + ½)/26 = 0.98077: z = 2.0704.
    const perfect = sensitivity({ hits: 25, misses: 0, falseAlarms: 0, correctRejections: 25 })
    close(perfect.dPrime, 2 * 2.0704, { abs: 1e-3, because: 'table of z' })
    expect(perfect.criterion).toBe(0)
  })

  it('has the standard deviation of the formula, with densities from the table', () => {
    // H = 0.8, F = 0.4, 100 of each: √(0.16/(101·0.28²) + 0.24/(101·0.386²)) by the table of the normal density.
    const { dPrimeSd, criterionSd } = sensitivity({ hits: 80, misses: 20, falseAlarms: 40, correctRejections: 60 })
    const byHand = Math.sqrt(0.16 / (101 * 0.27996 ** 2) + 0.24 / (101 * 0.38634 ** 2))
    close(dPrimeSd, byHand, { rel: 0.01, because: 'the half moves the shares a little' })
    close(criterionSd, byHand / 2, { rel: 0.01, because: 'as above' })
  })

  it('mirrors: who says the opposite of everything has the opposite sensitivity', () => {
    const one = sensitivity({ hits: 9, misses: 3, falseAlarms: 2, correctRejections: 7 })
    const other = sensitivity({ hits: 3, misses: 9, falseAlarms: 7, correctRejections: 2 })
    close(other.dPrime, -one.dPrime, { abs: 1e-12, because: 'rounding' })
    close(other.criterion, -one.criterion, { abs: 1e-12, because: 'rounding' })
  })

  it('refuses what has no clips of one kind', () => {
    expect(() => sensitivity({ hits: 3, misses: 0, falseAlarms: 0, correctRejections: 0 })).toThrow(/clips with a leak/)
    expect(() => sensitivity({ hits: -1, misses: 0, falseAlarms: 0, correctRejections: 1 })).toThrow('hits is -1')
  })
})
