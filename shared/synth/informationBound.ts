import { choleskyInPlace, choleskySolve } from '../base/cholesky'

/** One measurement: how it changes with each parameter, and its own variance. Zeros are left out. */
export interface Measurement {
  readonly at: readonly number[]
  readonly slope: readonly number[]
  readonly variance: number
}

/**
 * Standard deviation that no unbiased estimate of the first parameter can beat, the others unknown but for their priors
 * (the Bayesian Cramér-Rao bound of a model made linear at the truth).
 *
 *     J = Σ a·aᵀ/variance + diag(1/sd²),   bound = √((J⁻¹)₀₀)
 *
 * @param priorSd Of every parameter; Infinity: nothing is known.
 * @returns `null` when the measurements leave the first parameter open.
 * @see Patwari et al. 2003 for levels at known places. [Patwari2003]
 */
export function informationBound(measurements: readonly Measurement[], priorSd: readonly number[]): number | null {
  const size = priorSd.length
  const information = new Float64Array(size * size)
  for (let i = 0; i < size; i++) information[i * size + i] = 1 / priorSd[i]! ** 2
  for (const { at, slope, variance } of measurements)
    for (let a = 0; a < at.length; a++)
      for (let b = 0; b < at.length; b++) information[at[a]! * size + at[b]!]! += (slope[a]! * slope[b]!) / variance
  if (choleskyInPlace(information, size) === null) return null
  const unit = new Float64Array(size)
  unit[0] = 1
  choleskySolve(information, size, unit)
  return unit[0]! > 0 ? Math.sqrt(unit[0]!) : null
}
