import { InputError } from '../base/errors'

/** Where a detector says "leak", and what comes of it. */
export interface OperatingPoint {
  /** From this probability on it says leak. */
  readonly threshold: number
  readonly hits: number
  readonly misses: number
  readonly falseAlarms: number
  readonly rightlyNot: number
}

/** The highest threshold that misses at most a share of the leaks. @throws {InputError} no leak among the clips. */
export function operatingPoint(
  probability: readonly number[],
  isLeak: readonly boolean[],
  missShare: number,
): OperatingPoint {
  const leaks = probability.filter((_, i) => isLeak[i]).sort((a, b) => a - b)
  if (leaks.length === 0) throw new InputError('no clip is labelled a leak; a share of missed leaks needs some')
  return countAt(probability, isLeak, leaks[Math.floor(missShare * leaks.length)] ?? leaks[leaks.length - 1]!)
}

/** What comes of a threshold. */
export function countAt(probability: readonly number[], isLeak: readonly boolean[], threshold: number): OperatingPoint {
  const count = (leak: boolean, said: boolean) =>
    probability.filter((p, i) => isLeak[i] === leak && p >= threshold === said).length
  return {
    threshold,
    hits: count(true, true),
    misses: count(true, false),
    falseAlarms: count(false, true),
    rightlyNot: count(false, false),
  }
}
