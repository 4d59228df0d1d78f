import { choleskyInPlace, choleskySolve } from '../base/cholesky'
import { InputError } from '../base/errors'

/** Rows of numbers with what each was. */
export interface LabelledRows {
  /** rows × columns, all finite. */
  readonly rows: readonly Float64Array[]
  /** One a row. */
  readonly isLeak: readonly boolean[]
  /** What each row counts for, > 0; all 1 when left out. */
  readonly weights?: ArrayLike<number>
}

/** ln of the odds = intercept + Σ weight·value. */
export interface LinearOdds {
  readonly intercept: number
  readonly weights: Float64Array
}

const MOST_STEPS = 100
/** A step that moves no number by more than this ends the fit. */
const SETTLED = 1e-10

/**
 * Logistic regression with a quadratic pull of the weights to 0 (the intercept is free):
 *
 *     least of  Σ rowWeight·ln(1 + e^(−y·(a + w·x))) + penalty/2·|w|²,   y = ±1
 *
 * by Newton's method with halved steps (iteratively reweighted least squares).
 *
 * @param penalty > 0; 1/C of the programs that write it the other way round.
 * @throws {InputError} no rows, one class only, rows of different length, a number that is not finite, a penalty not above 0.
 * @see Hosmer & Lemeshow 2000. [HosmerLemeshow2000]
 */
export function logisticRegression({ rows, isLeak, weights }: LabelledRows, penalty: number): LinearOdds {
  check(rows, isLeak, penalty)
  const size = rows[0]!.length + 1
  let here: Float64Array = new Float64Array(size)
  const data = { rows, isLeak, weights: weights ?? new Float64Array(rows.length).fill(1), penalty }
  let cost = costAt(data, here)
  for (let step = 0; step < MOST_STEPS; step++) {
    const move = newtonStep(data, here)
    let share = 1
    let there = moved(here, move, share)
    let tried = costAt(data, there)
    while (tried > cost && share > 1e-6) {
      share /= 2
      there = moved(here, move, share)
      tried = costAt(data, there)
    }
    if (tried > cost) break
    const most = move.reduce((m, value) => Math.max(m, Math.abs(share * value)), 0)
    here = there
    cost = tried
    if (most < SETTLED) break
  }
  return { intercept: here[0]!, weights: here.slice(1) }
}

/** ln of the odds of a row. */
export function logOdds({ intercept, weights }: LinearOdds, row: ArrayLike<number>): number {
  let sum = intercept
  for (let i = 0; i < weights.length; i++) sum += weights[i]! * row[i]!
  return sum
}

/** Probability of ln odds. */
export function probabilityOf(odds: number): number {
  return odds >= 0 ? 1 / (1 + Math.exp(-odds)) : Math.exp(odds) / (1 + Math.exp(odds))
}

type Data = Required<LabelledRows> & { readonly penalty: number }

function check(rows: readonly Float64Array[], isLeak: readonly boolean[], penalty: number): void {
  if (rows.length === 0 || rows.length !== isLeak.length) {
    throw new InputError(`${rows.length} rows with ${isLeak.length} labels; as many labels as rows, at least one`)
  }
  if (isLeak.every((leak) => leak === isLeak[0])) throw new InputError('labels are of one class only; both are needed')
  if (!(penalty > 0)) throw new InputError(`penalty is ${penalty}; must be above 0`)
  for (const [i, row] of rows.entries()) {
    if (row.length !== rows[0]!.length) {
      throw new InputError(`row ${i} has ${row.length} numbers; the first has ${rows[0]!.length}`)
    }
    if (!row.every(Number.isFinite)) throw new InputError(`row ${i} holds a number that is not finite`)
  }
}

function oddsOf(here: Float64Array, row: Float64Array): number {
  let sum = here[0]!
  for (let i = 0; i < row.length; i++) sum += here[i + 1]! * row[i]!
  return sum
}

function costAt({ rows, isLeak, weights, penalty }: Data, here: Float64Array): number {
  let cost = 0
  for (let i = 1; i < here.length; i++) cost += 0.5 * penalty * here[i]! ** 2
  for (const [r, row] of rows.entries()) {
    const signed = isLeak[r] ? oddsOf(here, row) : -oddsOf(here, row)
    cost += weights[r]! * (signed > 0 ? Math.log1p(Math.exp(-signed)) : Math.log1p(Math.exp(signed)) - signed)
  }
  return cost
}

function newtonStep({ rows, isLeak, weights, penalty }: Data, here: Float64Array): Float64Array {
  const size = here.length
  const curvature = new Float64Array(size * size)
  const slope = new Float64Array(size)
  // A trace on the free intercept keeps the matrix positive where every row is certain.
  curvature[0] = 1e-12
  for (let i = 1; i < size; i++) {
    curvature[i * size + i] = penalty
    slope[i] = -penalty * here[i]!
  }
  for (const [r, row] of rows.entries()) {
    const p = probabilityOf(oddsOf(here, row))
    const pull = weights[r]! * ((isLeak[r] ? 1 : 0) - p)
    const weight = weights[r]! * p * (1 - p)
    for (let i = 0; i < size; i++) {
      const value = i === 0 ? 1 : row[i - 1]!
      slope[i]! += pull * value
      for (let j = 0; j <= i; j++) curvature[i * size + j]! += weight * value * (j === 0 ? 1 : row[j - 1]!)
    }
  }
  choleskyInPlace(curvature, size)
  choleskySolve(curvature, size, slope)
  return slope
}

function moved(from: Float64Array, move: Float64Array, share: number): Float64Array {
  return from.map((value, i) => value + share * move[i]!)
}
