import { choleskyInPlace, choleskySolve } from '../base/cholesky'

/** Numbers that each setting-down has of its own, and where each stands among them. */
export const OWN = 5
export const OWN_AT = { gain: 0, tilt: 1, floor: 2, floorTilt: 3, floorChange: 4 } as const

/**
 * Normal equations of a least-squares step in which some parameters are shared by all settings-down and five belong to
 * each. The own ones are eliminated (Schur complement), so a step costs as if only the shared ones were there.
 *
 * Only the lower half of the shared matrix is kept; columns of a row must come in rising order.
 */
export class NormalEquations {
  readonly step: Float64Array
  readonly ownStep: Float64Array
  /** ln of the determinant of the whole matrix, after `solve`. */
  logDeterminant = 0

  private readonly matrix: Float64Array
  private readonly slope: Float64Array
  private readonly ownMatrix: Float64Array
  private readonly ownSlope: Float64Array
  private readonly cross: Float64Array
  private readonly factor: Float64Array
  private readonly ownFactor: Float64Array
  private readonly eliminated: Float64Array
  private readonly right = new Float64Array(OWN)

  /** @param size Number of shared parameters. @param groups Number of settings-down. */
  constructor(
    private readonly size: number,
    private readonly groups: number,
  ) {
    this.matrix = new Float64Array(size * size)
    this.factor = new Float64Array(size * size)
    this.slope = new Float64Array(size)
    this.step = new Float64Array(size)
    this.ownMatrix = new Float64Array(groups * OWN * OWN)
    this.ownFactor = new Float64Array(groups * OWN * OWN)
    this.ownSlope = new Float64Array(groups * OWN)
    this.ownStep = new Float64Array(groups * OWN)
    this.cross = new Float64Array(groups * OWN * size)
    this.eliminated = new Float64Array(OWN * size)
  }

  clear(): void {
    this.matrix.fill(0)
    this.slope.fill(0)
    this.ownMatrix.fill(0)
    this.ownSlope.fill(0)
    this.cross.fill(0)
  }

  /** Adds a quadratic pull on one shared parameter or between two of them (row ≥ column). */
  addShared(row: number, column: number, precision: number): void {
    this.matrix[row * this.size + column]! += precision
  }

  addSharedSlope(row: number, slope: number): void {
    this.slope[row]! += slope
  }

  /** Adds a quadratic pull on one of a setting-down's own parameters. */
  addOwn(group: number, index: number, precision: number, slope: number): void {
    this.ownMatrix[(group * OWN + index) * OWN + index]! += precision
    this.ownSlope[group * OWN + index]! += slope
  }

  /** Adds one observation: its derivatives by shared (sparse) and own parameters, its residual and weight. */
  addRow(group: number, row: SparseRow, residual: number, weight: number): void {
    const n = this.size
    const { columns, values, own, count } = row
    for (let p = 0; p < count; p++) {
      const value = values[p]! * weight
      if (value === 0) continue
      const column = columns[p]!
      this.slope[column]! += value * residual
      const at = column * n
      for (let q = 0; q <= p; q++) this.matrix[at + columns[q]!]! += value * values[q]!
      for (let i = 0; i < OWN; i++) this.cross[(group * OWN + i) * n + column]! += value * own[i]!
    }
    for (let i = 0; i < OWN; i++) {
      const value = own[i]! * weight
      this.ownSlope[group * OWN + i]! += value * residual
      for (let j = 0; j < OWN; j++) this.ownMatrix[(group * OWN + i) * OWN + j]! += value * own[j]!
    }
  }

  /**
   * Solves for the step, with Levenberg's damping of the diagonal.
   *
   * @returns false when the equations are not positive definite; `step` and `ownStep` are then meaningless.
   */
  solve(damping: number): boolean {
    const n = this.size
    this.factor.set(this.matrix)
    this.step.set(this.slope)
    for (let i = 0; i < n; i++) this.factor[i * n + i]! *= 1 + damping
    this.logDeterminant = 0
    for (let k = 0; k < this.groups; k++) {
      const own = this.ownFactorOf(k)
      own.set(this.ownMatrix.subarray(k * OWN * OWN, (k + 1) * OWN * OWN))
      for (let i = 0; i < OWN; i++) own[i * OWN + i]! *= 1 + damping
      const logOwn = choleskyInPlace(own, OWN)
      if (logOwn === null) return false
      this.logDeterminant += logOwn
      this.eliminate(k, own)
    }
    const logShared = choleskyInPlace(this.factor, n)
    if (logShared === null) return false
    this.logDeterminant += logShared
    choleskySolve(this.factor, n, this.step)
    for (let k = 0; k < this.groups; k++) this.solveOwn(k)
    return true
  }

  private ownFactorOf(group: number): Float64Array {
    return this.ownFactor.subarray(group * OWN * OWN, (group + 1) * OWN * OWN)
  }

  /** S −= Cᵀ·A⁻¹·C and its right side, with A = L·Lᵀ: V = L⁻¹·C, then S −= Vᵀ·V. */
  private eliminate(group: number, l: Float64Array): void {
    const n = this.size
    const v = this.eliminated
    const own = group * OWN
    const right = this.right
    for (let i = 0; i < OWN; i++) {
      let sum = this.ownSlope[own + i]!
      for (let k = 0; k < i; k++) sum -= l[i * OWN + k]! * right[k]!
      right[i] = sum / l[i * OWN + i]!
    }
    const [l10, l20, l21, l30, l31] = [l[5]!, l[10]!, l[11]!, l[15]!, l[16]!]
    const [l32, l40, l41, l42, l43] = [l[17]!, l[20]!, l[21]!, l[22]!, l[23]!]
    const [by0, by1, by2, by3, by4] = [1 / l[0]!, 1 / l[6]!, 1 / l[12]!, 1 / l[18]!, 1 / l[24]!]
    const [s0, s1, s2, s3, s4] = [right[0]!, right[1]!, right[2]!, right[3]!, right[4]!]
    const at = own * n
    for (let c = 0; c < n; c++) {
      const a = this.cross[at + c]! * by0
      const b = (this.cross[at + n + c]! - l10 * a) * by1
      const d = (this.cross[at + 2 * n + c]! - l20 * a - l21 * b) * by2
      const e = (this.cross[at + 3 * n + c]! - l30 * a - l31 * b - l32 * d) * by3
      const f = (this.cross[at + 4 * n + c]! - l40 * a - l41 * b - l42 * d - l43 * e) * by4
      v[c] = a
      v[n + c] = b
      v[2 * n + c] = d
      v[3 * n + c] = e
      v[4 * n + c] = f
      this.step[c]! -= a * s0 + b * s1 + d * s2 + e * s3 + f * s4
    }
    for (let r = 0; r < n; r++) {
      const v0 = v[r]!
      const v1 = v[n + r]!
      const v2 = v[2 * n + r]!
      const v3 = v[3 * n + r]!
      const v4 = v[4 * n + r]!
      if (v0 === 0 && v1 === 0 && v2 === 0 && v3 === 0 && v4 === 0) continue
      const row = r * n
      for (let c = 0; c <= r; c++)
        this.factor[row + c]! -=
          v0 * v[c]! + v1 * v[n + c]! + v2 * v[2 * n + c]! + v3 * v[3 * n + c]! + v4 * v[4 * n + c]!
    }
  }

  private solveOwn(group: number): void {
    const n = this.size
    for (let i = 0; i < OWN; i++) {
      let sum = this.ownSlope[group * OWN + i]!
      const row = (group * OWN + i) * n
      for (let c = 0; c < n; c++) sum -= this.cross[row + c]! * this.step[c]!
      this.right[i] = sum
    }
    choleskySolve(this.ownFactorOf(group), OWN, this.right)
    this.ownStep.set(this.right, group * OWN)
  }
}

/** One observation's derivatives: by shared parameters in rising order of column, and by the own ones. */
export interface SparseRow {
  readonly columns: Int32Array
  readonly values: Float64Array
  readonly own: Float64Array
  count: number
}
