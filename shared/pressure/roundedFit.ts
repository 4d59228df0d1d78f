import { choleskyInPlace, choleskySolve } from '../base/cholesky'
import { InputError } from '../base/errors'
import { type RoundedLikelihood, roundedLikelihood, TABLE_PER_STEP } from './roundedLikelihood'

/** Readings as rows of a linear model. */
export interface RoundedRows {
  /** What was read, in steps of the gauge; one for each row. */
  readonly steps: Float64Array
  /** How many readings each row stands for. */
  readonly counts: Float64Array
  /** The model's columns, one value a row each: the reading is their sum, each times its coefficient. */
  readonly columns: readonly Float64Array[]
}

/** What the readings say of the coefficients: places with weights. */
export interface RoundedFit {
  /** For each column its coefficient at every place, in steps. */
  readonly coefficients: readonly Float64Array[]
  /** Weight of every place; they sum to 1. */
  readonly weights: Float64Array
  /** Mean and covariance (row-major) of the coefficients. */
  readonly mean: Float64Array
  readonly covariance: Float64Array
  /** Noise of needle and eye in steps, mean. */
  readonly noiseSteps: number
}

/**
 * Regression of readings that were rounded to the gauge's step.
 *
 * Every reading says only that the needle stood within half a step of it, give or take the noise of needle and eye. Ordinary
 * least squares takes the rounding for noise that averages out; it does not, when the needle creeps by less than a step
 * in the whole test. So the likelihood of the intervals is integrated: flat in the coefficients, and in the noise flat in
 * its logarithm, which for a gauge much finer than the noise gives Student's interval of ordinary regression.
 * Integrated over a lattice that is laid by the moments of the one before.
 *
 * @throws {InputError} fewer rows than columns, or columns that cannot be told apart.
 * @see Sheppard 1898 on grouping; Burridge 1981 on the likelihood of grouped normal data. [Burridge1981]
 */
export function roundedFit(rows: RoundedRows): RoundedFit {
  const size = rows.columns.length
  if (rows.steps.length < size) throw new InputError(`${rows.steps.length} rows for ${size} coefficients`)
  const all = candidates(rows)
  let noise = all.filter((_, i) => i % 2 === 0) // half of them will do to lay the lattice
  let { mean, covariance } = firstGuess(rows)
  for (let stage = 0; stage < STAGES; stage++) {
    const fit = overLattice(rows, noise, lattice(mean, covariance, STAGE_POINTS, STAGE_SPAN_SD))
    if (stage > 0) noise = fit.likelyNoise
    mean = fit.mean
    // A lattice much coarser than the answer sees one place only: never narrow by more than its own step allows.
    covariance = fit.covariance.map((value, i) => value + GUARD * covariance[i]!)
  }
  const near = all.filter((i) => noise.some((likely) => Math.abs(likely - i) < 2))
  return overLattice(rows, near, lattice(mean, covariance, size > 2 ? 13 : 21, LAST_SPAN_SD))
}

const STAGES = 4
const STAGE_POINTS = 9
const STAGE_SPAN_SD = 3.5
const LAST_SPAN_SD = 4.5
const GUARD = 0.08 // about a twelfth of the stage lattice's step squared

/** Noise of needle and eye in steps: from one that nobody sees to one that drowns the steps, each ⁴√3 of the one before. */
const NOISES = Array.from({ length: 36 }, (_, i) => 0.06 * 3 ** (i / 4))
const LIKELIHOODS = NOISES.map(roundedLikelihood)

/** Those that can matter: up to three times what is left when least squares has taken its part, and the smallest always. */
function candidates(rows: RoundedRows): number[] {
  const { mean } = leastSquares(rows)
  const { steps, counts, columns } = rows
  let sum = 0
  let total = 0
  for (let i = 0; i < steps.length; i++) {
    const off = steps[i]! - columns.reduce((at, column, j) => at + mean[j]! * column[i]!, 0)
    sum += counts[i]! * off * off
    total += counts[i]!
  }
  const mostSteps = Math.max(0.9, 3 * Math.sqrt(sum / Math.max(1, total - columns.length)))
  const leastSteps = Math.sqrt(sum / total) / 6
  return NOISES.map((_, i) => i).filter(
    (i) => NOISES[i]! <= mostSteps && (NOISES[i]! >= leastSteps || leastSteps < 0.1),
  )
}

interface Moments {
  readonly mean: Float64Array
  readonly covariance: Float64Array
}

function leastSquares({ steps, counts, columns }: RoundedRows): { mean: Float64Array; factor: Float64Array } {
  const size = columns.length
  const factor = new Float64Array(size * size)
  const mean = new Float64Array(size)
  for (let i = 0; i < steps.length; i++) {
    for (let j = 0; j < size; j++) {
      const weighed = counts[i]! * columns[j]![i]!
      mean[j]! += weighed * steps[i]!
      for (let k = 0; k <= j; k++) factor[j * size + k]! += weighed * columns[k]![i]!
    }
  }
  if (choleskyInPlace(factor, size) === null) throw new InputError('the columns of the model cannot be told apart')
  choleskySolve(factor, size, mean)
  return { mean, factor }
}

/** Least squares, with an uncertainty that allows for readings all rounded the same way. */
function firstGuess(rows: RoundedRows): Moments {
  const { mean, factor } = leastSquares(rows)
  const size = mean.length
  const count = rows.counts.reduce((sum, each) => sum + each, 0)
  const covariance = new Float64Array(size * size)
  for (let j = 0; j < size; j++) {
    const column = new Float64Array(size)
    column[j] = 1
    choleskySolve(factor, size, column)
    for (let k = 0; k < size; k++) covariance[k * size + j] = column[k]! * (0.5 + 0.05 * count)
  }
  return { mean, covariance }
}

/**
 * Places round the mean, evenly along the axes of the covariance's factor and within a ball of so many deviations; one typed
 * array a coefficient.
 */
function lattice(mean: Float64Array, covariance: Float64Array, points: number, spanSd: number): Float64Array[] {
  const size = mean.length
  const factor = Float64Array.from(covariance)
  if (choleskyInPlace(factor, size) === null) throw new InputError('the covariance of a fit is not positive definite')
  const unit = unitLattice(size, points)
  return Array.from(mean, (centre, j) => {
    const places = new Float64Array(unit[0]!.length).fill(centre)
    for (let k = 0; k <= j; k++) {
      const reach = spanSd * factor[j * size + k]!
      for (let i = 0; i < places.length; i++) places[i]! += reach * unit[k]![i]!
    }
    return places
  })
}

/** Places of an even lattice on −1 to 1 that lie within the unit ball. */
function unitLattice(size: number, points: number): Float64Array[] {
  const axes: number[][] = Array.from({ length: size }, () => [])
  for (let i = 0; i < points ** size; i++) {
    const at = axes.map((_, k) => (2 * (Math.floor(i / points ** k) % points)) / (points - 1) - 1)
    if (at.reduce((sum, each) => sum + each * each, 0) > 1 + 1e-9) continue
    for (const [k, axis] of axes.entries()) axis.push(at[k]!)
  }
  return axes.map((axis) => Float64Array.from(axis))
}

/** Noise whose best place is less likely than this against the best of all is not looked at again: e^-12. */
const LEAST_LOG = -12

function overLattice(
  rows: RoundedRows,
  noise: readonly number[],
  places: readonly Float64Array[],
): RoundedFit & { readonly likelyNoise: number[] } {
  const count = places[0]!.length
  const logs = noise.map((at) => logLikelihoods(rows, LIKELIHOODS[at]!, places))
  let top = Number.NEGATIVE_INFINITY
  for (const each of logs) for (let i = 0; i < count; i++) top = Math.max(top, each[i]!)
  const weights = new Float64Array(count)
  let total = 0
  let noiseSum = 0
  for (const [n, each] of logs.entries()) {
    for (let i = 0; i < count; i++) {
      const weight = Math.exp(each[i]! - top)
      weights[i]! += weight
      total += weight
      noiseSum += weight * NOISES[noise[n]!]!
    }
  }
  for (let i = 0; i < count; i++) weights[i]! /= total
  const likelyNoise = noise.filter((_, n) => logs[n]!.some((log) => log - top > LEAST_LOG))
  return { coefficients: places, weights, ...moments(places, weights), noiseSteps: noiseSum / total, likelyNoise }
}

function logLikelihoods(
  { steps, counts, columns }: RoundedRows,
  { table, beyond }: RoundedLikelihood,
  places: readonly Float64Array[],
): Float64Array {
  const logs = new Float64Array(places[0]!.length)
  const [constant, slope, bend] = columns
  const [at0, at1, at2] = places
  const last = table.length - 2
  for (let i = 0; i < logs.length; i++) {
    let sum = 0
    for (let row = 0; row < steps.length; row++) {
      const straight = at0![i]! * constant![row]! + at1![i]! * slope![row]!
      const model = bend === undefined ? straight : straight + at2![i]! * bend[row]!
      const off = Math.abs(model - steps[row]!)
      const at = off * TABLE_PER_STEP
      const below = at | 0
      const log = at < last ? table[below]! + (at - below) * (table[below + 1]! - table[below]!) : beyond(off)
      sum += counts[row]! * log
    }
    logs[i] = sum
  }
  return logs
}

function moments(places: readonly Float64Array[], weights: Float64Array): Moments {
  const size = places.length
  const mean = Float64Array.from(places, (at) => at.reduce((sum, value, i) => sum + weights[i]! * value, 0))
  const covariance = new Float64Array(size * size)
  for (let j = 0; j < size; j++) {
    for (let k = 0; k < size; k++) {
      let sum = 0
      for (let i = 0; i < weights.length; i++) {
        sum += weights[i]! * (places[j]![i]! - mean[j]!) * (places[k]![i]! - mean[k]!)
      }
      covariance[j * size + k] = sum + (j === k ? 1e-9 : 0)
    }
  }
  return { mean, covariance }
}
