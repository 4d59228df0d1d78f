import { InputError } from './errors'

/**
 * Sample quantile with linear interpolation between order statistics (type 7: the default of R and NumPy).
 *
 * @param values Any order, at least one, finite.
 * @param probability 0 to 1.
 * @throws {InputError} no values; probability outside 0 to 1.
 * @see Hyndman & Fan 1996, definition 7. [HyndmanFan1996] in sources.ts
 */
export function quantile(values: ArrayLike<number>, probability: number): number {
  if (values.length === 0) throw new InputError('quantile of no values')
  if (!(probability >= 0 && probability <= 1)) throw new InputError(`probability is ${probability}; must be 0 to 1`)
  const sorted = Float64Array.from(values).sort()
  return quantileOfSorted(sorted, probability)
}

/** The same for values already in rising order; nothing is checked, so that it can stand in a loop. */
export function quantileOfSorted(sorted: ArrayLike<number>, probability: number): number {
  const at = (sorted.length - 1) * probability
  const below = Math.floor(at)
  const low = sorted[below]!
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!
  return low + (at - below) * (high - low)
}

/** Middle value. @throws {InputError} no values. */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5)
}

/** Arithmetic mean. @throws {InputError} no values. */
export function mean(values: ArrayLike<number>): number {
  if (values.length === 0) throw new InputError('mean of no values')
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += values[i]!
  return sum / values.length
}

/** Standard deviation with n − 1; 0 for a single value. @throws {InputError} no values. */
export function standardDeviation(values: ArrayLike<number>): number {
  const centre = mean(values)
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += (values[i]! - centre) ** 2
  return values.length === 1 ? 0 : Math.sqrt(sum / (values.length - 1))
}

/** Median absolute deviation from the median, times 1.4826 (agrees with the standard deviation of a normal). */
export function robustSpread(values: ArrayLike<number>): number {
  const centre = median(values)
  return 1.4826 * median(Float64Array.from(values, (v) => Math.abs(v - centre)))
}

/** log(Σ exp(v)), without overflow; −Infinity for no values. */
export function logSumExp(values: ArrayLike<number>): number {
  let top = Number.NEGATIVE_INFINITY
  for (let i = 0; i < values.length; i++) top = Math.max(top, values[i]!)
  if (top === Number.NEGATIVE_INFINITY) return top
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += Math.exp(values[i]! - top)
  return top + Math.log(sum)
}

/**
 * Quantile of the standard normal, relative error below 1.2e-9.
 *
 * @param probability Between 0 and 1, both excluded.
 * @see Acklam 2003, rational approximation (from memory; checked in the tests against table values). [Acklam2003]
 */
export function normalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1))
    throw new InputError(`probability is ${probability}; must be within 0 to 1`)
  const a = [
    -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716, 2.506628277459239,
  ]
  const b = [-54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572]
  const c = [
    -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
    2.938163982698783,
  ]
  const d = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416]
  const horner = (coefficients: number[], x: number) => coefficients.reduce((sum, k) => sum * x + k, 0)
  const tail = 0.02425
  if (probability < tail || probability > 1 - tail) {
    const q = Math.sqrt(-2 * Math.log(Math.min(probability, 1 - probability)))
    return Math.sign(probability - 0.5) * -1 * (horner(c, q) / horner([...d, 1], q))
  }
  const q = probability - 0.5
  const r = q * q
  return (horner(a, r) * q) / horner([...b, 1], r)
}

/**
 * Quantile of a chi-squared variable divided by its degrees of freedom (so its mean is 1).
 *
 * Wilson and Hilferty's cube-root form: within 1 % of the exact value for 3 degrees of freedom and more at the
 * probabilities used here (0.1 to 0.9).
 *
 * @see Wilson & Hilferty 1931. [WilsonHilferty1931] in sources.ts
 */
export function chiSquaredOverDofQuantile(probability: number, degreesOfFreedom: number): number {
  const k = 2 / (9 * degreesOfFreedom)
  return Math.max(0, 1 - k + normalQuantile(probability) * Math.sqrt(k)) ** 3
}
