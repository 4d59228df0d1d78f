import { InputError } from '../base/errors'
import { logisticRegression, logOdds, probabilityOf } from './logisticRegression'

/** Turns a detector's ln odds into odds that come true: offset + slope·odds. */
export interface Calibration {
  readonly offset: number
  readonly slope: number
}

/** So little that only a perfect split is kept from running away. */
const PENALTY = 1e-3

/**
 * Platt's scaling of odds from cross-validation.
 *
 * @throws {InputError} one class only.
 * @see Platt 1999. [Platt1999]
 */
export function calibrate(odds: readonly number[], isLeak: readonly boolean[]): Calibration {
  const { intercept, weights } = logisticRegression(
    { rows: odds.map((each) => Float64Array.of(each)), isLeak },
    PENALTY,
  )
  return { offset: intercept, slope: weights[0]! }
}

/** Probability after calibration. */
export function calibrated({ offset, slope }: Calibration, odds: number): number {
  return probabilityOf(logOdds({ intercept: offset, weights: Float64Array.of(slope) }, [odds]))
}

/** Mean square of probability less outcome: 0 perfect, 0.25 for saying one half always. @see Brier 1950. [Brier1950] */
export function brierScore(probability: readonly number[], isLeak: readonly boolean[]): number {
  if (probability.length === 0 || probability.length !== isLeak.length) {
    throw new InputError(`${probability.length} probabilities with ${isLeak.length} labels; as many, at least one`)
  }
  return probability.reduce((sum, p, i) => sum + (p - (isLeak[i] ? 1 : 0)) ** 2, 0) / probability.length
}

/** One bar of a calibration curve. */
export interface CalibrationBin {
  readonly low: number
  readonly high: number
  /** Mean probability said, and share that were leaks; `null` where no clip fell into the bin. */
  readonly said: number | null
  readonly happened: number | null
  readonly clips: number
}

/** What came of probabilities of each size, in even bins. */
export function calibrationCurve(
  probability: readonly number[],
  isLeak: readonly boolean[],
  bins = 10,
): CalibrationBin[] {
  return Array.from({ length: bins }, (_, b) => {
    const inBin = probability.flatMap((p, i) => (Math.min(bins - 1, Math.floor(p * bins)) === b ? [i] : []))
    const share = (of: (i: number) => number) =>
      inBin.length === 0 ? null : inBin.reduce((sum, i) => sum + of(i), 0) / inBin.length
    return {
      low: b / bins,
      high: (b + 1) / bins,
      said: share((i) => probability[i]!),
      happened: share((i) => (isLeak[i] ? 1 : 0)),
      clips: inBin.length,
    }
  })
}
