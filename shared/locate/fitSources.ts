import { choleskyInPlace, choleskySolve } from '../base/cholesky'
import type { GroundPrior } from '../ground/groundPrior'
import {
  type Geometry,
  noPaths,
  noTransfer,
  type Paths,
  preparePaths,
  type Transfer,
  transfer,
} from '../ground/transfer'
import { type FitModel, type ShapeLayout, shapeLayout, shapePrior } from './fitModel'

/** A source at a place that is tried: the leak (unknown), or the air inlet or a told noise (known). */
export interface TriedSource {
  readonly kind: 'leak' | 'inlet' | 'noise'
  /** To each setting-down, in the model's order. */
  readonly geometry: readonly Geometry[]
}

/** The best fit with its evidence. */
export interface Fit {
  /** ln of the probability of the levels given the places, everything else integrated out by Laplace's method. */
  readonly logEvidence: number
  /** Shape, then a spectrum a source, then the floor. */
  readonly shared: Float64Array
  /** Gain (dB), tilt (dB per octave) and floor offset (dB) of each setting-down. */
  readonly own: Float64Array
  /** rms of the weighted air-on residuals, dB. */
  readonly residualDb: number
  readonly converged: boolean
  /** Of the first source, modelled at each setting-down in its best band against the floor there, dB. */
  readonly overFloorDb: Float64Array
}

/** Gain between settings-down, dB. Chosen within 2 to 6 dB for hand-placed sensors (common practice, no source). */
const GAIN_SD_DB = 2.8
/** Tilt between settings-down, dB per octave. Chosen. */
const TILT_SD_DB = 1
/** Floor of one place against the next, dB. Chosen. */
const FLOOR_SD_DB = 3
/** Degrees of freedom of the gain's and floor's t-distribution: one setting-down may be badly off. Chosen. */
const OWN_FREEDOM = 4
/** Misfit of one band at one setting-down, dB: finite clips and what the ground's law leaves out. Chosen. */
const CELL_SD_DB = 2
/** Degrees of freedom of the misfit's t-distribution. Chosen. */
const CELL_FREEDOM = 4
/** How far an air-off level says what the floor was during the air-on clip, dB. Chosen. */
const OFF_SD_DB = 1.2
/** What a cell counts for, since neighbouring bands err together. Calibrated on the synthetic yard. */
const CELL_SHARE = 0.5
/** A source's spectrum from one band to the next, dB. Chosen. */
const SPECTRUM_STEP_DB = 5
/** A source's mean level right above it against the floor. Chosen: from well below hearing to very loud. */
const SOURCE_OVER_FLOOR_DB = { mean: 8, sd: 12 }
/** The floor's spectrum from one band to the next, and its mean against the first guess, dB. Chosen. */
const FLOOR_STEP_DB = 8
const FLOOR_LEVEL_SD_DB = 15

/** A step that gains less than this, in nepers, ends the fit: far below what shifts a window. Chosen. */
const SETTLED = 0.03

const OWN = 3
const NEPERS_PER_DB_POWER = Math.LN10 / 10
const MOST_STEPS = 25

/**
 * Fits sources at given places to all bands and settings-down at once.
 *
 *     level[k, b] = 10·log10( Σ_sources 10^((S[b] + drift·walk[k] + gain[k] + tilt[k]·oct[b] + T[k, b])/10) + floor )
 *
 * with the floor taken from the air-off clip of the same setting-down where there is one, and otherwise a floor a band
 * with an offset a setting-down. T is the ground's transfer. Residuals are t-distributed, so one odd band or one
 * setting-down cannot pull the rest. Gauss-Newton with the settings-down eliminated (Schur complement); the evidence by
 * Laplace's method, so that levels, ground, gains and tilts are integrated out rather than fixed.
 *
 * @param model   The sweep.
 * @param sources Places tried, leaks first.
 * @param ground  Prior of the ground at the leak.
 * @param start   A `shared` of the same layout to start from, or `null` to start from the levels themselves.
 */
export function fitSources(
  model: FitModel,
  sources: readonly TriedSource[],
  ground: GroundPrior,
  start: Float64Array | null,
): Fit {
  const work = new Workspace(model, sources, ground)
  work.begin(start)
  let objective = work.assemble()
  let damping = 0
  let converged = false
  for (let step = 0; step < MOST_STEPS && !converged; step++) {
    const gain = work.propose(damping)
    if (gain === null) {
      damping = Math.max(damping * 10, 1e-3)
      if (damping > 1e6) break
      continue
    }
    const tried = work.tryStep()
    if (tried <= objective + 1e-9) {
      converged = objective - tried < SETTLED
      objective = tried
      damping = damping < 1e-6 ? 0 : damping / 10
    } else {
      work.undoStep()
      damping = Math.max(damping * 10, 1e-2)
      if (damping > 1e6) break
    }
  }
  return { ...work.finish(objective), converged }
}

/** All arrays of one fit, so that nothing is allocated inside the loop. */
class Workspace {
  private readonly bands: number
  private readonly settings: number
  private readonly layout: ShapeLayout
  private readonly size: number
  private readonly floorAt: number
  private readonly prior: { mean: Float64Array; sd: Float64Array }
  private readonly sourcePrecision: Float64Array
  private readonly floorPrecision: Float64Array
  private readonly sourceMean: number

  private shared: Float64Array
  private own: Float64Array
  private sharedBefore: Float64Array
  private ownBefore: Float64Array
  private readonly hessian: Float64Array
  private readonly factor: Float64Array
  private readonly slope: Float64Array
  private readonly step: Float64Array
  private readonly ownHessian: Float64Array
  private readonly ownSlope: Float64Array
  private readonly cross: Float64Array
  private readonly eliminated: Float64Array
  private readonly ownFactor: Float64Array
  private logDeterminant = 0
  private readonly overFloorDb: Float64Array
  private squares = 0
  private squaresWeight = 0

  private readonly level: Float64Array
  private readonly move: Transfer[]
  private readonly paths: Paths[][]
  private readonly columns: Int32Array
  private readonly values: Float64Array
  private readonly ownRow = new Float64Array(OWN)

  constructor(
    private readonly model: FitModel,
    private readonly sources: readonly TriedSource[],
    ground: GroundPrior,
  ) {
    this.bands = model.bandKhz.length
    this.settings = model.settings.length
    this.layout = shapeLayout(model)
    this.floorAt = this.layout.count + sources.length * this.bands
    this.size = this.floorAt + this.bands
    this.prior = shapePrior(model, ground)
    this.sourcePrecision = spectrumPrecision(this.bands, SPECTRUM_STEP_DB, SOURCE_OVER_FLOOR_DB.sd)
    this.floorPrecision = spectrumPrecision(this.bands, FLOOR_STEP_DB, FLOOR_LEVEL_SD_DB)
    this.sourceMean = model.floorDb.reduce((sum, db) => sum + db, 0) / this.bands + SOURCE_OVER_FLOOR_DB.mean
    const n = this.size
    this.shared = new Float64Array(n)
    this.sharedBefore = new Float64Array(n)
    this.own = new Float64Array(this.settings * OWN)
    this.ownBefore = new Float64Array(this.settings * OWN)
    this.hessian = new Float64Array(n * n)
    this.factor = new Float64Array(n * n)
    this.slope = new Float64Array(n)
    this.step = new Float64Array(n)
    this.ownHessian = new Float64Array(this.settings * OWN * OWN)
    this.ownSlope = new Float64Array(this.settings * OWN)
    this.ownFactor = new Float64Array(this.settings * OWN * OWN)
    this.cross = new Float64Array(this.settings * OWN * n)
    this.eliminated = new Float64Array(OWN * n)
    this.level = new Float64Array(sources.length)
    this.overFloorDb = new Float64Array(this.settings)
    this.move = sources.map(noTransfer)
    this.paths = sources.map((source) => source.geometry.map(noPaths))
    this.columns = new Int32Array(5 + 4 + sources.length + 2)
    this.values = new Float64Array(this.columns.length)
  }

  begin(start: Float64Array | null): void {
    this.own.fill(0)
    if (start !== null) {
      this.shared.set(start)
      return
    }
    this.shared.set(this.prior.mean)
    this.shared.set(this.model.floorDb, this.floorAt)
    this.preparePaths()
    for (const [j, source] of this.sources.entries()) this.guessSpectrum(j, source)
  }

  /** Level at the nearest setting-down that heard something, carried back to the source. */
  private guessSpectrum(j: number, source: TriedSource): void {
    const order = source.geometry
      .map((g, k) => ({ k, g }))
      .filter(({ k }) => this.model.settings[k]!.on !== null)
      .sort((a, b) => a.g.acrossM - b.g.acrossM)
    const nearest = order[0]
    for (let b = 0; b < this.bands; b++) {
      const floor = this.model.floorDb[b]!
      let db = floor - 3
      if (nearest) {
        const row = this.model.settings[nearest.k]!.on!
        const moved = transfer(this.ground(), this.paths[j]![nearest.k]!, this.model.bandKhz[b]!, this.move[j]!)
        if (row.weight[b]! > 0) db = Math.max(db, Math.min(row.levelDb[b]! - moved.db, floor + 40))
      }
      this.shared[this.layout.count + j * this.bands + b] = db
    }
  }

  private preparePaths(): void {
    const ratio = Math.exp(this.shared[this.layout.logDepthRatio]!)
    for (let j = 0; j < this.sources.length; j++) {
      const { geometry } = this.sources[j]!
      for (let k = 0; k < this.settings; k++) preparePaths(geometry[k]!, ratio, this.paths[j]![k]!)
    }
  }

  private ground() {
    return {
      spreading: this.shared[0]!,
      absorptionDbPerMKhz: Math.exp(this.shared[1]!),
      pipeLevelDb: this.shared[2]!,
      pipeLossDbPerMKhz: Math.exp(this.shared[3]!),
    }
  }

  /** Fills normal equations at the present parameters. @returns the objective. */
  assemble(): number {
    this.hessian.fill(0)
    this.slope.fill(0)
    this.ownHessian.fill(0)
    this.ownSlope.fill(0)
    this.cross.fill(0)
    this.squares = 0
    this.squaresWeight = 0
    this.overFloorDb.fill(Number.NEGATIVE_INFINITY)
    return this.assemblePriors() + this.assembleCells()
  }

  private assemblePriors(): number {
    let objective = 0
    const n = this.size
    for (let i = 0; i < this.layout.count; i++) {
      const precision = 1 / this.prior.sd[i]! ** 2
      const off = this.shared[i]! - this.prior.mean[i]!
      objective += 0.5 * precision * off * off
      this.hessian[i * n + i]! += precision
      this.slope[i]! -= precision * off
    }
    for (let j = 0; j < this.sources.length; j++) {
      objective += this.assembleSpectrum(
        this.layout.count + j * this.bands,
        this.sourcePrecision,
        (_) => this.sourceMean,
      )
    }
    objective += this.assembleSpectrum(this.floorAt, this.floorPrecision, (b) => this.model.floorDb[b]!)
    for (let k = 0; k < this.settings; k++) objective += this.assembleOwnPrior(k)
    return objective
  }

  private assembleSpectrum(at: number, precision: Float64Array, meanOf: (band: number) => number): number {
    const n = this.size
    let objective = 0
    for (let a = 0; a < this.bands; a++) {
      let pull = 0
      for (let b = 0; b < this.bands; b++) {
        const p = precision[a * this.bands + b]!
        if (p === 0) continue
        pull += p * (this.shared[at + b]! - meanOf(b))
        this.hessian[(at + a) * n + at + b]! += p
      }
      objective += 0.5 * (this.shared[at + a]! - meanOf(a)) * pull
      this.slope[at + a]! -= pull
    }
    return objective
  }

  private assembleOwnPrior(k: number): number {
    let objective = 0
    const sds = [GAIN_SD_DB, TILT_SD_DB, FLOOR_SD_DB]
    for (let i = 0; i < OWN; i++) {
      const value = this.own[k * OWN + i]!
      const sd = sds[i]!
      const square = (value / sd) ** 2
      const precision = (OWN_FREEDOM + 1) / (OWN_FREEDOM + square) / (sd * sd)
      objective += 0.5 * (OWN_FREEDOM + 1) * Math.log(1 + square / OWN_FREEDOM)
      this.ownHessian[(k * OWN + i) * OWN + i]! += precision
      this.ownSlope[k * OWN + i]! -= precision * value
    }
    return objective
  }

  private assembleCells(): number {
    let objective = 0
    this.preparePaths()
    const ground = this.ground()
    for (let k = 0; k < this.settings; k++) {
      const { on, off } = this.model.settings[k]!
      for (let b = 0; b < this.bands; b++) {
        if (on && on.weight[b]! > 0) objective += this.cell(k, b, 'on', ground)
        if (off && off.weight[b]! > 0) objective += this.cell(k, b, 'off', ground)
      }
    }
    return objective
  }

  /** One band at one setting-down with the air on or off: residual, its row, its share of the objective. */
  private cell(k: number, b: number, air: 'on' | 'off', ground: ReturnType<Workspace['ground']>): number {
    const setting = this.model.settings[k]!
    const row = setting[air]!
    const told = air === 'on' && setting.off !== null && setting.off.weight[b]! > 0 ? setting.off.levelDb[b]! : null
    const { layout } = this
    const gain = this.own[k * OWN]!
    const tilt = this.own[k * OWN + 1]!
    const octave = this.model.bandOctaves[b]!
    const cover = this.model.coverOf[k]!
    const coverColumn = cover > 0 ? layout.cover + cover - 1 : -1
    const sweepColumn = setting.sweepIndex > 0 ? layout.sweepSource + setting.sweepIndex - 1 : -1
    const floorColumn = setting.sweepIndex > 0 ? layout.sweepFloor + setting.sweepIndex - 1 : -1

    const floorDb =
      told ??
      this.shared[this.floorAt + b]! + this.own[k * OWN + 2]! + (floorColumn < 0 ? 0 : this.shared[floorColumn]!)
    let total = Math.exp(NEPERS_PER_DB_POWER * floorDb)
    const floorPower = total
    const coupled =
      gain +
      tilt * octave +
      (coverColumn < 0 ? 0 : this.shared[coverColumn]!) +
      (sweepColumn < 0 ? 0 : this.shared[sweepColumn]!)
    for (let j = 0; j < this.sources.length; j++) {
      const source = this.sources[j]!
      // Told noises stand in an air-off clip already; leak and inlet sound only with the air on.
      const sounds = source.kind === 'noise' ? told === null : air === 'on'
      if (!sounds) {
        this.level[j] = 0
        continue
      }
      const moved = transfer(ground, this.paths[j]![k]!, this.model.bandKhz[b]!, this.move[j]!)
      const drift = source.kind === 'noise' ? 0 : this.shared[layout.drift + setting.sweepIndex]! * setting.walk
      this.level[j] = Math.exp(
        NEPERS_PER_DB_POWER * (this.shared[layout.count + j * this.bands + b]! + moved.db + coupled + drift),
      )
      total += this.level[j]!
    }

    if (air === 'on' && this.level.length > 0) {
      const overDb = Math.log(this.level[0]! / (total - this.level[0]!)) / NEPERS_PER_DB_POWER
      this.overFloorDb[k] = Math.max(this.overFloorDb[k]!, overDb)
    }
    let count = 0
    let sourceShare = 0
    let airShare = 0
    const shape = this.values
    shape.fill(0, 0, 5)
    for (let i = 0; i < 5; i++) this.columns[i] = i
    count = 5
    for (let j = 0; j < this.sources.length; j++) {
      const source = this.sources[j]!
      const share = this.level[j]! / total
      if (share < 1e-6) continue
      const moved = this.move[j]!
      shape[0]! += share * moved.bySpreading
      shape[1]! += share * moved.byLogAbsorption
      shape[2]! += share * moved.byPipeLevel
      shape[3]! += share * moved.byLogPipeLoss
      shape[4]! += share * moved.byLogDepth
      this.columns[count] = layout.count + j * this.bands + b
      this.values[count++] = share
      sourceShare += share
      if (source.kind !== 'noise') airShare += share
    }
    this.columns[count] = layout.drift + setting.sweepIndex
    this.values[count++] = airShare * setting.walk
    if (coverColumn >= 0) {
      this.columns[count] = coverColumn
      this.values[count++] = sourceShare
    }
    if (sweepColumn >= 0) {
      this.columns[count] = sweepColumn
      this.values[count++] = sourceShare
    }
    const floorShare = told === null ? floorPower / total : 0
    if (told === null) {
      this.columns[count] = this.floorAt + b
      this.values[count++] = floorShare
      if (floorColumn >= 0) {
        this.columns[count] = floorColumn
        this.values[count++] = floorShare
      }
    }
    this.ownRow[0] = sourceShare
    this.ownRow[1] = sourceShare * octave
    this.ownRow[2] = floorShare

    const residual = row.levelDb[b]! - Math.log(total) / NEPERS_PER_DB_POWER
    // From the levels, not from the model, so that the objective stays one function.
    const offError =
      told === null ? 0 : OFF_SD_DB * Math.min(1, Math.exp(NEPERS_PER_DB_POWER * (told - row.levelDb[b]!)))
    const variance = CELL_SD_DB * CELL_SD_DB + offError * offError
    const square = (residual * residual) / variance
    const share = CELL_SHARE * row.weight[b]!
    const weight = (share * (CELL_FREEDOM + 1)) / (CELL_FREEDOM + square) / variance
    if (air === 'on') {
      this.squares += weight * variance * residual * residual
      this.squaresWeight += weight * variance
    }
    this.add(k, count, residual, weight)
    return share * 0.5 * (CELL_FREEDOM + 1) * Math.log(1 + square / CELL_FREEDOM)
  }

  /** Adds one row to the normal equations. */
  private add(k: number, count: number, residual: number, weight: number): void {
    const n = this.size
    const { columns, values, ownRow } = this
    for (let p = 0; p < count; p++) {
      const value = values[p]! * weight
      if (value === 0) continue
      const column = columns[p]!
      this.slope[column]! += value * residual
      for (let q = 0; q < count; q++) this.hessian[column * n + columns[q]!]! += value * values[q]!
      for (let i = 0; i < OWN; i++) this.cross[(k * OWN + i) * n + column]! += value * ownRow[i]!
    }
    for (let i = 0; i < OWN; i++) {
      const value = ownRow[i]! * weight
      this.ownSlope[k * OWN + i]! += value * residual
      for (let j = 0; j < OWN; j++) this.ownHessian[(k * OWN + i) * OWN + j]! += value * ownRow[j]!
    }
  }

  /** Solves for the next step with Levenberg's damping. @returns `null` when the equations could not be solved. */
  propose(damping: number): number | null {
    const n = this.size
    this.factor.set(this.hessian)
    this.step.set(this.slope)
    for (let i = 0; i < n; i++) this.factor[i * n + i]! *= 1 + damping
    let logDeterminant = 0
    for (let k = 0; k < this.settings; k++) {
      const own = this.ownFactor.subarray(k * OWN * OWN, (k + 1) * OWN * OWN)
      own.set(this.ownHessian.subarray(k * OWN * OWN, (k + 1) * OWN * OWN))
      for (let i = 0; i < OWN; i++) own[i * OWN + i]! *= 1 + damping
      const logOwn = choleskyInPlace(own, OWN)
      if (logOwn === null) return null
      logDeterminant += logOwn
      this.eliminate(k, own)
    }
    const logShared = choleskyInPlace(this.factor, n)
    if (logShared === null) return null
    choleskySolve(this.factor, n, this.step)
    this.logDeterminant = logDeterminant + logShared
    return logDeterminant
  }

  /** Takes one setting-down's own numbers out of the shared equations: S −= Cᵀ·A⁻¹·C. */
  private eliminate(k: number, own: Float64Array): void {
    const n = this.size
    const v = this.eliminated
    let s0 = this.ownSlope[k * OWN]! / own[0]!
    let s1 = (this.ownSlope[k * OWN + 1]! - own[3]! * s0) / own[4]!
    let s2 = (this.ownSlope[k * OWN + 2]! - own[6]! * s0 - own[7]! * s1) / own[8]!
    for (let c = 0; c < n; c++) {
      const a = this.cross[k * OWN * n + c]! / own[0]!
      const b = (this.cross[(k * OWN + 1) * n + c]! - own[3]! * a) / own[4]!
      const d = (this.cross[(k * OWN + 2) * n + c]! - own[6]! * a - own[7]! * b) / own[8]!
      v[c] = a
      v[n + c] = b
      v[2 * n + c] = d
      this.step[c]! -= a * s0 + b * s1 + d * s2
    }
    for (let r = 0; r < n; r++) {
      s0 = v[r]!
      s1 = v[n + r]!
      s2 = v[2 * n + r]!
      if (s0 === 0 && s1 === 0 && s2 === 0) continue
      const row = r * n
      for (let c = 0; c <= r; c++) this.factor[row + c]! -= s0 * v[c]! + s1 * v[n + c]! + s2 * v[2 * n + c]!
    }
  }

  /** Takes the proposed step and assembles there. @returns the new objective. */
  tryStep(): number {
    const n = this.size
    this.sharedBefore.set(this.shared)
    this.ownBefore.set(this.own)
    const right = new Float64Array(OWN)
    for (let k = 0; k < this.settings; k++) {
      for (let i = 0; i < OWN; i++) {
        let sum = this.ownSlope[k * OWN + i]!
        const row = (k * OWN + i) * n
        for (let c = 0; c < n; c++) sum -= this.cross[row + c]! * this.step[c]!
        right[i] = sum
      }
      choleskySolve(this.ownFactor.subarray(k * OWN * OWN, (k + 1) * OWN * OWN), OWN, right)
      for (let i = 0; i < OWN; i++) this.own[k * OWN + i]! += right[i]!
    }
    for (let c = 0; c < n; c++) this.shared[c]! += this.step[c]!
    this.keepInRange()
    return this.assemble()
  }

  /** Keeps the ground where its law makes sense; the prior does the rest. */
  private keepInRange(): void {
    const clamp = (i: number, low: number, high: number) => {
      this.shared[i] = Math.min(high, Math.max(low, this.shared[i]!))
    }
    clamp(0, 0.2, 3)
    clamp(1, Math.log(0.2), Math.log(300))
    clamp(2, -60, 10)
    clamp(3, Math.log(0.3), Math.log(60))
    clamp(4, -1.5, 1.5)
  }

  undoStep(): void {
    this.shared.set(this.sharedBefore)
    this.own.set(this.ownBefore)
    this.assemble()
  }

  finish(objective: number): Omit<Fit, 'converged'> {
    this.propose(0)
    let logPrior = 0
    for (const sd of this.prior.sd) logPrior -= 2 * Math.log(sd)
    const logSpectrum = choleskyInPlace(this.sourcePrecision.slice(), this.bands) ?? 0
    logPrior += this.sources.length * logSpectrum
    return {
      logEvidence: -objective - 0.5 * this.logDeterminant + 0.5 * logPrior,
      shared: this.shared,
      own: this.own,
      overFloorDb: this.overFloorDb,
      residualDb: this.squaresWeight > 0 ? Math.sqrt(this.squares / this.squaresWeight) : 0,
    }
  }
}

/** Precision of a spectrum that wanders from band to band by `stepDb` and whose mean is known to `levelSdDb`. */
function spectrumPrecision(bands: number, stepDb: number, levelSdDb: number): Float64Array {
  const precision = new Float64Array(bands * bands)
  const level = 1 / (levelSdDb * bands) ** 2
  precision.fill(level)
  const step = 1 / (stepDb * stepDb)
  for (let b = 1; b < bands; b++) {
    precision[(b - 1) * bands + b - 1]! += step
    precision[b * bands + b]! += step
    precision[(b - 1) * bands + b]! -= step
    precision[b * bands + b - 1]! -= step
  }
  return precision
}
