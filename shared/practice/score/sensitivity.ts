import { InputError } from '../../base/errors'
import { normalQuantile } from '../../base/statistics'

/** How often a leak was there or not, and what was said. Whole numbers, ≥ 0. */
export interface YesNoCounts {
  readonly hits: number
  readonly misses: number
  readonly falseAlarms: number
  readonly correctRejections: number
}

/** Sensitivity and bias, each with its standard deviation. */
export interface Sensitivity {
  /** 0: guessing; about 1: seven in ten right; 3: nearly always right. */
  readonly dPrime: number
  readonly dPrimeSd: number
  /** Above 0: says "no leak" too readily; below 0: says "leak" too readily. */
  readonly criterion: number
  readonly criterionSd: number
}

/**
 * Sensitivity and criterion of somebody who says yes or no.
 *
 *     d' = z(H) − z(F),   c = −(z(H) + z(F)) / 2,   H = (hits + ½)/(signals + 1),   F = (false alarms + ½)/(others + 1)
 *
 * The half keeps shares of 0 and 1 finite and biases d' least of the usual ways (log-linear correction). Its price: a few
 * answers, all right, do not read as perfect.
 *
 *     var d' = H(1−H)/(n_H·φ(z_H)²) + F(1−F)/(n_F·φ(z_F)²),   var c = var d' / 4
 *
 * @throws {InputError} a count below 0; no clip with a leak, or none without.
 * @see Stanislaw & Todorov 1999 [StanislawTodorov1999]; Hautus 1995 for the half [Hautus1995]; Gourevitch & Galanter 1967
 *      for the variance [GourevitchGalanter1967].
 * @example sensitivity({ hits: 20, misses: 5, falseAlarms: 10, correctRejections: 15 }).dPrime // 1.04
 */
export function sensitivity(counts: YesNoCounts): Sensitivity {
  const { hits, misses, falseAlarms, correctRejections } = counts
  for (const [name, count] of Object.entries(counts)) {
    if (!(count >= 0)) throw new InputError(`${name} is ${count}; must be 0 or more`)
  }
  const signals = hits + misses
  const others = falseAlarms + correctRejections
  if (signals === 0 || others === 0) throw new InputError('needs clips with a leak and clips without')
  const hit = shareOf(hits, signals)
  const falseAlarm = shareOf(falseAlarms, others)
  const variance = spread(hit, signals + 1) + spread(falseAlarm, others + 1)
  return { ...fromShares(hit, falseAlarm), dPrimeSd: Math.sqrt(variance), criterionSd: Math.sqrt(variance) / 2 }
}

/** d' and criterion of shares that are neither 0 nor 1. */
export function fromShares(hitShare: number, falseAlarmShare: number): Pick<Sensitivity, 'dPrime' | 'criterion'> {
  const zHit = normalQuantile(hitShare)
  const zFalse = normalQuantile(falseAlarmShare)
  return { dPrime: zHit - zFalse, criterion: -(zHit + zFalse) / 2 + 0 }
}

function shareOf(count: number, total: number): number {
  return (count + 0.5) / (total + 1)
}

function spread(share: number, total: number): number {
  const density = Math.exp(-(normalQuantile(share) ** 2) / 2) / Math.sqrt(2 * Math.PI)
  return (share * (1 - share)) / (total * density ** 2)
}
