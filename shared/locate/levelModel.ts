import { choleskyInPlace } from '../base/cholesky'
import { median } from '../base/statistics'
import type { GroundPrior } from '../ground/groundPrior'
import {
  type Geometry,
  type Ground,
  noPaths,
  noTransfer,
  type Paths,
  preparePaths,
  type Transfer,
  transfer,
} from '../ground/transfer'
import {
  EXPECTED_NOISE,
  type FitModel,
  hasSlabEdge,
  type Noise,
  type ShapeLayout,
  STRETCH,
  SURFACE,
  shapeLayout,
  shapePrior,
} from './fitModel'
import { type NormalEquations, OWN, type SparseRow } from './normalEquations'

/** A source at a place that is tried: the leak (unknown), or the air inlet or a told noise (known). */
export interface TriedSource {
  readonly kind: 'leak' | 'inlet' | 'noise'
  /** To each setting-down, in the model's order. */
  readonly geometry: readonly Geometry[]
  /** Of a leak: whether air on its way from the inlet passes below each setting-down. */
  readonly passedBy?: readonly boolean[]
}

/** Where a fit stands. */
export interface Parameters {
  /** Shape, then a spectrum a source, then the floor. */
  readonly shared: Float64Array
  /** Gain (dB), tilt (dB per octave) and floor offset (dB) of each setting-down. */
  readonly own: Float64Array
}

/** Gain between settings-down, dB. Chosen within 2 to 6 dB for hand-placed sensors (common practice, no source). */
const GAIN_SD_DB = 2.5
/** Tilt between settings-down, dB per octave. Chosen. */
const TILT_SD_DB = 1
/** Degrees of freedom of the t-distribution of gain, tilt and floor: one setting-down may be badly off. Chosen. */
const OWN_FREEDOM = 7
/** Degrees of freedom of the misfit's t-distribution. Chosen. */
const CELL_FREEDOM = 4
/** What a cell counts for, since neighbouring bands err together. Calibrated on the synthetic yard. */
const CELL_SHARE = 0.5
/** Share of clips in which something else was heard that no air-off clip knows of: a step, a gust, a car. Chosen. */
const DISTURBED_SHARE = 0.1
/** The same where air passes below on its way from the inlet to the leak, with any spectrum that bubbles have. Chosen. */
const PASSED_SHARE = 0.2
const PASSED_SD_DB = 6
/** Such a disturbance has a smooth spectrum: standard deviations of its level, tilt and curve as rms over the bands, dB. */
const DISTURBED_SMOOTH_SD_DB = [8, 4, 3] as const
/** Misfit of one band round that smooth spectrum, dB. Chosen. */
const DISTURBED_SD_DB = 2
/** A source's spectrum from one band to the next, dB. Chosen. */
const SPECTRUM_STEP_DB = 4
/** A source's mean level right above it against the floor. Chosen: from well below hearing to very loud. */
const SOURCE_OVER_FLOOR_DB = { mean: 8, sd: 12 }
/** The floor's spectrum from one band to the next, and its mean against the first guess, dB. Chosen. */
const FLOOR_STEP_DB = 3
const FLOOR_LEVEL_SD_DB = 4
/** A source that gives less than this share of a level does not move it. Chosen: 0.0004 dB. */
const LEAST_SHARE = 1e-4
/** Frequency at which a stretch's loss a kHz changes nothing, kHz. */
const MIDDLE_KHZ = 0.5
const LEAST_SPREADING = 0.1
const NEPERS_PER_DB = Math.LN10 / 10

/**
 * What the levels of a sweep should be for sources at given places, and how far they are from it:
 *
 *     level[k, b] = 10·log10( Σ_sources 10^((S[b] + drift·walk[k] + gain[k] + tilt[k]·oct[b] + T[k, b])/10) + floor )
 *
 * with the floor taken from the air-off clip of the same setting-down where there is one, and otherwise a floor a band
 * with an offset a setting-down. T is the ground's transfer. Residuals are t-distributed, so one odd band or one
 * setting-down cannot pull the rest.
 */
export class LevelModel {
  readonly size: number
  private readonly ownSd: readonly number[]
  private readonly bands: number
  private readonly settings: number
  private readonly layout: ShapeLayout
  private readonly floorAt: number
  private readonly prior: { mean: Float64Array; sd: Float64Array }
  private readonly sourcePrecision: Float64Array
  private readonly floorPrecision: Float64Array
  private readonly sourceMean: number
  private readonly level: Float64Array
  private readonly move: Transfer[]
  private readonly paths: Paths[][]
  private readonly rows: SparseRow[]
  private readonly residuals: Float64Array
  private readonly rough: Float64Array
  private readonly shares: Float64Array
  private readonly weights: Float64Array
  /** Orthonormal level, tilt and curve over octaves. */
  private readonly smooth: readonly Float64Array[]
  /** Ground as each stretch and band see it. */
  private readonly grounds: { -readonly [key in keyof Ground]-?: number }[]
  /** The same for sources at the surface. */
  private readonly surfaceGrounds: { -readonly [key in keyof Ground]-?: number }[]
  /** Octaves squared, less their middle: what the curve of the spreading multiplies. */
  private readonly curve: Float64Array
  private readonly hasStretches: boolean
  private readonly hasSlabEdge: boolean
  /** Whether a whole clip may be disturbed; off while a fit is still far from its end. */
  doubtsClips = true
  private seen: { floor: number[]; source: number[] } | null = null
  private squares = 0
  private squaresWeight = 0

  constructor(
    private readonly model: FitModel,
    private readonly sources: readonly TriedSource[],
    ground: GroundPrior,
  ) {
    this.bands = model.bandKhz.length
    this.settings = model.settings.length
    this.layout = shapeLayout(model)
    this.ownSd = [GAIN_SD_DB, TILT_SD_DB, model.noise.floor.levelSdDb, model.noise.floor.tiltSdDb]
    this.floorAt = this.layout.count + sources.length * this.bands
    this.size = this.floorAt + this.bands
    this.prior = shapePrior(model, ground)
    this.sourcePrecision = spectrumPrecision(this.bands, SPECTRUM_STEP_DB, SOURCE_OVER_FLOOR_DB.sd)
    this.floorPrecision = spectrumPrecision(this.bands, FLOOR_STEP_DB, FLOOR_LEVEL_SD_DB)
    this.sourceMean = model.floorDb.reduce((sum, db) => sum + db, 0) / this.bands + SOURCE_OVER_FLOOR_DB.mean
    this.level = new Float64Array(sources.length)
    this.move = sources.map(noTransfer)
    this.paths = sources.map((source) => source.geometry.map(noPaths))
    const width = 15 + SURFACE + STRETCH + sources.length
    this.grounds = Array.from({ length: model.stretchCovers.length * this.bands }, () => ({
      spreading: 0,
      absorptionDbPerMKhz: 0,
      pipeLevelDb: 0,
      pipeLossDbPerMKhz: 0,
      slabLevelDb: 0,
      slabLossDbPerM: 0,
    }))
    this.surfaceGrounds = this.grounds.map((ground) => ({ ...ground }))
    this.hasSlabEdge = hasSlabEdge(model)
    this.curve = model.bandOctaves.map((octaves) => octaves * octaves - 2)
    this.hasStretches = model.stretchCovers.length > 1
    this.rows = Array.from({ length: this.bands }, () => ({
      columns: new Int32Array(width),
      values: new Float64Array(width),
      own: new Float64Array(OWN),
      count: 0,
    }))
    this.residuals = new Float64Array(this.bands)
    this.rough = new Float64Array(this.bands)
    this.shares = new Float64Array(this.bands)
    this.weights = new Float64Array(this.bands)
    this.smooth = parabolas(model.bandOctaves)
  }

  /** The prior's middle, with spectra guessed from the levels: a cold start. */
  guess(): Parameters {
    const parameters = { shared: new Float64Array(this.size), own: new Float64Array(this.settings * OWN) }
    parameters.shared.set(this.prior.mean)
    parameters.shared.set(this.model.floorDb, this.floorAt)
    this.prepare(parameters)
    for (let j = 0; j < this.sources.length; j++) this.guessSpectrum(j, parameters)
    return parameters
  }

  /** Level at the nearest setting-down that heard something, carried back to the source. */
  private guessSpectrum(j: number, parameters: Parameters): void {
    const order = this.sources[j]!.geometry.map((geometry, k) => ({ k, geometry }))
      .filter(({ k }) => this.model.settings[k]!.on !== null)
      .sort((a, b) => a.geometry.acrossM - b.geometry.acrossM)
    const nearest = order[0]
    for (let b = 0; b < this.bands; b++) {
      const floor = this.model.floorDb[b]!
      let db = floor - 3
      if (nearest) {
        const on = this.model.settings[nearest.k]!.on!
        const moved = transfer(
          this.groundAt(nearest.k, b, j),
          this.paths[j]![nearest.k]!,
          this.model.bandKhz[b]!,
          this.move[j]!,
        )
        if (on.weight[b]! > 0) db = Math.max(db, Math.min(on.levelDb[b]! - moved.db, floor + 40))
      }
      parameters.shared[this.layout.count + j * this.bands + b] = db
    }
  }

  /** ln of the prior's normalisation: what must be added to compare models with different numbers of sources. */
  logPriorNorm(): number {
    let log = 0
    for (const sd of this.prior.sd) log -= Math.log(sd)
    for (const sd of this.ownSd) log -= this.settings * Math.log(sd)
    const logSpectrum = choleskyInPlace(this.sourcePrecision.slice(), this.bands) ?? 0
    return log + 0.5 * this.sources.length * logSpectrum
  }

  /** rms of the weighted air-on residuals where `assemble` last stood, dB. */
  residualDb(): number {
    return this.squaresWeight > 0 ? Math.sqrt(this.squares / this.squaresWeight) : 0
  }

  /** How far the levels scatter where `assemble` last stood; half of it what was expected before. */
  noise(parameters: Parameters, equations: NormalEquations): Noise {
    this.seen = { floor: [], source: [] }
    this.assemble(parameters, equations)
    const { floor, source } = this.seen
    this.seen = null
    return {
      floorSdDb: learntSd(floor, EXPECTED_NOISE.floorSdDb),
      sourceSdDb: learntSd(source, EXPECTED_NOISE.sourceSdDb),
      floor: this.model.noise.floor,
    }
  }

  /** Keeps the ground where its law makes sense; the prior does the rest. */
  keepInRange({ shared }: Parameters): void {
    for (const [i, [low, high]] of GROUND_LIMITS.entries()) shared[i] = Math.min(high, Math.max(low, shared[i]!))
  }

  /** Fills the normal equations at the given parameters. @returns the objective: −ln of the posterior, less constants. */
  assemble(parameters: Parameters, equations: NormalEquations): number {
    equations.clear()
    this.squares = 0
    this.squaresWeight = 0
    this.prepare(parameters)
    let objective = this.assemblePriors(parameters, equations)
    for (let k = 0; k < this.settings; k++) {
      const { on, off } = this.model.settings[k]!
      if (on) objective += this.clip({ k, air: 'on', parameters, equations })
      if (off) objective += this.clip({ k, air: 'off', parameters, equations })
    }
    return objective
  }

  /** Of each leak, in its best band against all but leaks at each setting-down, dB. */
  leaksOverFloorDb(parameters: Parameters): Float64Array[] {
    const leaks = this.sources.filter((source) => source.kind === 'leak').length
    return Array.from({ length: leaks }, (_, j) => this.overFloorDbOf(j, leaks, parameters))
  }

  private overFloorDbOf(j: number, leaks: number, parameters: Parameters): Float64Array {
    this.prepare(parameters)
    return Float64Array.from({ length: this.settings }, (_, k) => {
      let best = Number.NEGATIVE_INFINITY
      for (let b = 0; b < this.bands; b++) {
        const told = this.toldFloor(k, b, 'on')
        const total = this.expect(k, b, 'on', told, parameters)
        let rest = total
        for (let i = 0; i < leaks; i++) rest -= this.level[i]!
        best = Math.max(best, Math.log(this.level[j]! / rest) / NEPERS_PER_DB)
      }
      return best
    })
  }

  private prepare({ shared }: Parameters): void {
    const ratio = Math.exp(shared[this.layout.logDepthRatio]!)
    for (let j = 0; j < this.sources.length; j++) {
      const { geometry } = this.sources[j]!
      for (let k = 0; k < this.settings; k++) preparePaths(geometry[k]!, ratio, this.paths[j]![k]!)
    }
    this.prepareGrounds(shared)
  }

  private prepareGrounds(shared: Float64Array): void {
    const { layout, bands } = this
    for (let s = 0; s < this.model.stretchCovers.length; s++) {
      const at = layout.stretch + STRETCH * s
      const absorption = Math.exp(shared[1]! + (this.hasStretches ? shared[at + 2]! : 0))
      const pipeLevel = shared[2]! + (this.hasStretches ? shared[at + 3]! : 0)
      const pipeLoss = Math.exp(shared[3]!)
      const slabLoss = Math.exp(shared[layout.logSlabLoss]!)
      for (let b = 0; b < bands; b++) {
        const ground = this.grounds[s * bands + b]!
        ground.spreading = Math.max(
          LEAST_SPREADING,
          shared[0]! +
            shared[layout.spreadingTilt]! * this.model.bandOctaves[b]! +
            shared[layout.spreadingCurve]! * this.curve[b]!,
        )
        ground.absorptionDbPerMKhz = absorption
        ground.pipeLevelDb = pipeLevel
        ground.pipeLossDbPerMKhz = pipeLoss
        ground.slabLevelDb = shared[layout.slabLevel]!
        ground.slabLossDbPerM = slabLoss
        const surface = this.surfaceGrounds[s * bands + b]!
        surface.spreading = Math.max(LEAST_SPREADING, ground.spreading + shared[layout.surface]!)
        surface.absorptionDbPerMKhz = absorption * Math.exp(shared[layout.surface + 1]!)
        surface.pipeLevelDb = pipeLevel + shared[layout.surface + 2]!
        surface.pipeLossDbPerMKhz = pipeLoss
        surface.slabLevelDb = ground.slabLevelDb
        surface.slabLossDbPerM = slabLoss
      }
    }
  }

  private groundAt(k: number, b: number, j: number): Ground {
    const grounds = this.sources[j]!.kind === 'leak' ? this.grounds : this.surfaceGrounds
    return grounds[this.model.stretchOf[k]! * this.bands + b]!
  }

  private onSlab(k: number): boolean {
    return this.hasSlabEdge && this.model.stretchCovers[this.model.stretchOf[k]!] === 'slab'
  }

  /** What sounds from below read at a setting-down for the stretch it stands on, dB. */
  private stretchDb(k: number, b: number, shared: Float64Array): number {
    if (!this.hasStretches) return 0
    const at = this.layout.stretch + STRETCH * this.model.stretchOf[k]!
    const response = this.onSlab(k) ? shared[this.layout.slabResponse + b]! : 0
    return shared[at]! - shared[at + 1]! * (this.model.bandKhz[b]! - MIDDLE_KHZ) + response
  }

  private assemblePriors({ shared, own }: Parameters, equations: NormalEquations): number {
    let objective = 0
    for (let i = 0; i < this.layout.count; i++) {
      const precision = 1 / this.prior.sd[i]! ** 2
      const off = shared[i]! - this.prior.mean[i]!
      objective += 0.5 * precision * off * off
      equations.addShared(i, i, precision)
      equations.addSharedSlope(i, -precision * off)
    }
    for (let j = 0; j < this.sources.length; j++) {
      const at = this.layout.count + j * this.bands
      objective += this.assembleSpectrum(at, this.sourcePrecision, null, shared, equations)
    }
    objective += this.assembleSpectrum(this.floorAt, this.floorPrecision, this.model.floorDb, shared, equations)
    for (let i = 0; i < own.length; i++) {
      const value = own[i]!
      const sd = this.ownSd[i % OWN]!
      const square = (value / sd) ** 2
      const precision = (OWN_FREEDOM + 1) / (OWN_FREEDOM + square) / (sd * sd)
      objective += 0.5 * (OWN_FREEDOM + 1) * Math.log(1 + square / OWN_FREEDOM)
      equations.addOwn(Math.floor(i / OWN), i % OWN, precision, -precision * value)
    }
    return objective
  }

  private assembleSpectrum(
    at: number,
    precision: Float64Array,
    meanDb: Float64Array | null,
    shared: Float64Array,
    equations: NormalEquations,
  ): number {
    let objective = 0
    const off = (b: number) => shared[at + b]! - (meanDb === null ? this.sourceMean : meanDb[b]!)
    for (let a = 0; a < this.bands; a++) {
      let pull = 0
      for (let b = 0; b < this.bands; b++) {
        const p = precision[a * this.bands + b]!
        pull += p * off(b)
        if (b <= a) equations.addShared(at + a, at + b, p)
      }
      objective += 0.5 * off(a) * pull
      equations.addSharedSlope(at + a, -pull)
    }
    return objective
  }

  /** The floor as the air-off clip of the same setting-down tells it, dBFS; `null` where there is none. */
  private toldFloor(k: number, b: number, air: 'on' | 'off'): number | null {
    const floor = air === 'on' ? this.model.toldFloorDb[k]! : null
    return floor !== null && floor.weight[b]! > 0 ? floor.levelDb[b]! : null
  }

  /** Power expected in a cell; leaves each source's share of it in `level`. */
  private expect(k: number, b: number, air: 'on' | 'off', told: number | null, { shared, own }: Parameters): number {
    const { layout } = this
    const { sweepIndex, walk } = this.model.settings[k]!
    const octaves = this.model.bandOctaves[b]!
    const gainDb = own[k * OWN]! + own[k * OWN + 1]! * octaves
    const floorDb =
      told ??
      shared[this.floorAt + b]! +
        shared[layout.floorCoupling]! * gainDb +
        own[k * OWN + 2]! +
        own[k * OWN + 3]! * octaves +
        (sweepIndex > 0 ? shared[layout.sweepFloor + sweepIndex - 1]! : 0)
    const coupledDb =
      gainDb + this.stretchDb(k, b, shared) + (sweepIndex > 0 ? shared[layout.sweepSource + sweepIndex - 1]! : 0)
    const driftDb = shared[layout.drift + sweepIndex]! * walk
    let total = Math.exp(NEPERS_PER_DB * floorDb)
    for (let j = 0; j < this.sources.length; j++) {
      // Told noises stand in an air-off clip already; leak and inlet sound only with the air on.
      const isNoise = this.sources[j]!.kind === 'noise'
      if (isNoise ? told !== null : air === 'off') {
        this.level[j] = 0
        continue
      }
      const moved = transfer(this.groundAt(k, b, j), this.paths[j]![k]!, this.model.bandKhz[b]!, this.move[j]!)
      const sourceDb = shared[layout.count + j * this.bands + b]! + moved.db + coupledDb + (isNoise ? 0 : driftDb)
      this.level[j] = Math.exp(NEPERS_PER_DB * sourceDb)
      total += this.level[j]!
    }
    return total
  }

  /**
   * One clip: adds its rows, returns its share of the objective.
   *
   * Either the sources and the floor explain it, or it was disturbed by something with a smooth spectrum. Its rows weigh
   * by the probability of the first.
   */
  private clip(at: {
    readonly k: number
    readonly air: 'on' | 'off'
    readonly parameters: Parameters
    readonly equations: NormalEquations
  }): number {
    const { k, air } = at
    const clip = this.model.settings[k]![air]!
    let explained = 0
    for (let b = 0; b < this.bands; b++) {
      this.residuals[b] = 0
      if (clip.weight[b]! === 0) continue
      const told = this.toldFloor(k, b, air)
      const total = this.expect(k, b, air, told, at.parameters)
      const residual = clip.levelDb[b]! - Math.log(total) / NEPERS_PER_DB
      const sourceShare = this.fillRow(k, b, told, total, at.parameters)
      const floorSd = told === null ? this.model.noise.floorSdDb : this.model.toldSdDb[b]!
      this.shares[b] = sourceShare
      const variance = floorSd * floorSd + (sourceShare * this.model.noise.sourceSdDb) ** 2
      const share = CELL_SHARE * clip.weight[b]!
      this.residuals[b] = residual
      this.weights[b] = (share * (CELL_FREEDOM + 1)) / (CELL_FREEDOM + (residual * residual) / variance) / variance
      explained += share * cellCost(residual, variance)
    }
    if (!this.doubtsClips) {
      this.addRows(at, 1)
      return explained
    }
    const passed = air === 'on' && (this.sources[0]?.passedBy?.[k] ?? false) ? PASSED_SHARE : 0
    const a = Math.log(1 - DISTURBED_SHARE - passed) - explained
    const c = Math.log(DISTURBED_SHARE) - this.disturbedCost(clip.weight)
    const p = passed > 0 ? Math.log(passed) - this.passedCost(clip.weight) : Number.NEGATIVE_INFINITY
    const top = Math.max(a, c, p)
    const log = top + Math.log(Math.exp(a - top) + Math.exp(c - top) + Math.exp(p - top))
    this.addRows(at, Math.exp(a - log))
    return -log
  }

  /** Cost of a clip whose residuals are a smooth spectrum of some size and what is left over. */
  private disturbedCost(weight: Float64Array): number {
    const { bands, residuals } = this
    const rough = this.rough
    rough.set(residuals)
    let cost = 0
    for (const [i, shape] of this.smooth.entries()) {
      let size = 0
      for (let b = 0; b < bands; b++) size += shape[b]! * residuals[b]!
      for (let b = 0; b < bands; b++) rough[b]! -= size * shape[b]!
      const sd = DISTURBED_SMOOTH_SD_DB[i]! * Math.sqrt(bands)
      cost += 0.5 * (size / sd) ** 2 + Math.log(sd / DISTURBED_SD_DB) + 0.5 * Math.log(CELL_SHARE)
    }
    for (let b = 0; b < bands; b++) {
      if (weight[b]! > 0) cost += CELL_SHARE * weight[b]! * cellCost(rough[b]!, DISTURBED_SD_DB * DISTURBED_SD_DB)
    }
    return cost
  }

  /** Cost of a clip in which bubbles on their way were heard: bands err widely and each by itself. */
  private passedCost(weight: Float64Array): number {
    let cost = 0
    for (let b = 0; b < this.bands; b++) {
      if (weight[b]! > 0) cost += CELL_SHARE * weight[b]! * cellCost(this.residuals[b]!, PASSED_SD_DB * PASSED_SD_DB)
    }
    return cost
  }

  private addRows(
    { k, air, equations }: { k: number; air: 'on' | 'off'; equations: NormalEquations },
    trust: number,
  ): void {
    const clip = this.model.settings[k]![air]!
    for (let b = 0; b < this.bands; b++) {
      if (clip.weight[b]! === 0) continue
      const weight = trust * this.weights[b]!
      if (this.seen !== null && trust > 0.5) this.note(k, b, air)
      if (air === 'on') {
        this.squares += clip.weight[b]! * trust * this.residuals[b]! ** 2
        this.squaresWeight += clip.weight[b]! * trust
      }
      if (this.rows[b]!.count > 0) equations.addRow(k, this.rows[b]!, this.residuals[b]!, weight)
    }
  }

  private note(k: number, b: number, air: 'on' | 'off'): void {
    const share = this.shares[b]!
    if (share > 0.7) this.seen!.source.push(Math.abs(this.residuals[b]!))
    else if (share < 0.2 && this.toldFloor(k, b, air) === null) this.seen!.floor.push(Math.abs(this.residuals[b]!))
  }

  /** Derivatives of a cell's level, from what `expect` left; columns in rising order. @returns the sources' share. */
  private fillRow(k: number, b: number, told: number | null, total: number, at: Parameters): number {
    const { layout } = this
    const row = this.rows[b]!
    const { columns, values, own } = row
    const { sweepIndex, walk } = this.model.settings[k]!
    const stretch = this.hasStretches ? layout.stretch + STRETCH * this.model.stretchOf[k]! : -1
    let sourceShare = 0
    let airShare = 0
    for (let j = 0; j < this.sources.length; j++) {
      const share = this.level[j]! / total
      sourceShare += share
      if (this.sources[j]!.kind !== 'noise') airShare += share
    }
    const heard = sourceShare > LEAST_SHARE
    const floorShare = told === null ? 1 - sourceShare : 0
    row.count = 0
    const put = (column: number, value: number) => {
      columns[row.count] = column
      values[row.count++] = value
    }
    if (heard) {
      this.fillGround(row, b, total)
    }
    const octaves = this.model.bandOctaves[b]!
    const coupling = floorShare * at.shared[layout.floorCoupling]!
    if (floorShare > 0) put(layout.floorCoupling, floorShare * (at.own[k * OWN]! + at.own[k * OWN + 1]! * octaves))
    if (heard) {
      this.fillSlab(row, total)
      this.fillSurface(row, total)
      put(layout.drift + sweepIndex, airShare * walk)
      if (sweepIndex > 0) put(layout.sweepSource + sweepIndex - 1, sourceShare)
    }
    if (floorShare > 0 && sweepIndex > 0) put(layout.sweepFloor + sweepIndex - 1, floorShare)
    if (heard) {
      if (stretch >= 0) {
        put(stretch, sourceShare)
        put(stretch + 1, -(this.model.bandKhz[b]! - MIDDLE_KHZ) * sourceShare)
        put(stretch + 2, values[1]!)
        put(stretch + 3, values[2]!)
        if (this.onSlab(k)) put(layout.slabResponse + b, sourceShare)
      }
      for (let j = 0; j < this.sources.length; j++) put(layout.count + j * this.bands + b, this.level[j]! / total)
    }
    if (floorShare > 0) put(this.floorAt + b, floorShare)
    own[0] = (heard ? sourceShare : 0) + coupling
    own[1] = own[0]! * octaves
    own[2] = floorShare
    own[3] = floorShare * octaves
    return sourceShare
  }

  /** The two numbers of slabs, for a listener on one. */
  private fillSlab(row: SparseRow, total: number): void {
    let byLevel = 0
    let byLoss = 0
    for (let j = 0; j < this.sources.length; j++) {
      const share = this.level[j]! / total
      if (share === 0) continue
      byLevel += share * this.move[j]!.bySlabLevel
      byLoss += share * this.move[j]!.byLogSlabLoss
    }
    if (byLevel === 0) return
    row.columns[row.count] = this.layout.slabLevel
    row.values[row.count++] = byLevel
    row.columns[row.count] = this.layout.logSlabLoss
    row.values[row.count++] = byLoss
  }

  /** The numbers in which sources at the surface differ. */
  private fillSurface(row: SparseRow, total: number): void {
    let [bySpreading, byAbsorption, byPipe, heard] = [0, 0, 0, 0]
    for (let j = 0; j < this.sources.length; j++) {
      if (this.sources[j]!.kind === 'leak') continue
      const share = this.level[j]! / total
      heard += share
      bySpreading += share * this.move[j]!.bySpreading
      byAbsorption += share * this.move[j]!.byLogAbsorption
      byPipe += share * this.move[j]!.byPipeLevel
    }
    if (heard <= LEAST_SHARE) return
    for (const [i, value] of [bySpreading, byAbsorption, byPipe].entries()) {
      row.columns[row.count] = this.layout.surface + i
      row.values[row.count++] = value
    }
  }

  /** The numbers of the ground, which stand first. */
  private fillGround(row: SparseRow, b: number, total: number): void {
    const { columns, values } = row
    values.fill(0, 0, 7)
    for (let i = 0; i < 7; i++) columns[i] = i
    for (let j = 0; j < this.sources.length; j++) {
      const share = this.level[j]! / total
      if (share === 0) continue
      const moved = this.move[j]!
      values[0]! += share * moved.bySpreading
      values[1]! += share * moved.byLogAbsorption
      values[2]! += share * moved.byPipeLevel
      values[3]! += share * moved.byLogPipeLoss
      values[4]! += share * moved.byLogDepth
    }
    values[5] = values[0]! * this.model.bandOctaves[b]!
    values[6] = values[0]! * this.curve[b]!
    row.count = 7
  }
}

/** A few cells before any were seen, the parameters that every setting-down spends, and the least and most, dB. Chosen. */
const LEARNING = { before: 12, spent: 1.25, least: 0.3, most: 3 }

function learntSd(absolute: readonly number[], expectedDb: number): number {
  const n = absolute.length
  const seen = n === 0 ? 0 : (LEARNING.spent * median(absolute)) / 0.6745
  const variance = (n * seen * seen + LEARNING.before * expectedDb * expectedDb) / (n + LEARNING.before)
  return Math.min(LEARNING.most, Math.max(LEARNING.least, Math.sqrt(variance)))
}

/** Spreading, ln absorption, pipe level, ln pipe loss, ln depth ratio. */
const GROUND_LIMITS = [
  [0.2, 3],
  [Math.log(0.2), Math.log(300)],
  [-60, 10],
  [Math.log(0.3), Math.log(60)],
  [-1.5, 1.5],
  [-0.6, 0.6],
  [-0.3, 0.3],
  [-0.2, 1.2],
  [-30, 6],
  [Math.log(0.1), Math.log(20)],
  [-1, 1.5],
  [-1.5, 1.5],
  [-20, 20],
] as const

/** −ln of the t-density of a residual, less what is the same for all. */
function cellCost(residualDb: number, variance: number): number {
  return (
    0.5 * ((CELL_FREEDOM + 1) * Math.log(1 + (residualDb * residualDb) / variance / CELL_FREEDOM) + Math.log(variance))
  )
}

/** Orthonormal polynomials of degree 0 to 2 over the bands' octaves. */
function parabolas(octaves: Float64Array): Float64Array[] {
  const n = octaves.length
  const mean = octaves.reduce((sum, x) => sum + x, 0) / n
  const basis: Float64Array[] = []
  for (let power = 0; power < Math.min(3, n); power++) {
    const raw = octaves.map((x) => (x - mean) ** power)
    for (const earlier of basis) {
      const dot = raw.reduce((sum, x, i) => sum + x * earlier[i]!, 0)
      for (let i = 0; i < n; i++) raw[i]! -= dot * earlier[i]!
    }
    const length = Math.sqrt(raw.reduce((sum, x) => sum + x * x, 0))
    basis.push(raw.map((x) => x / length))
  }
  return basis
}

/** Precision of a spectrum that wanders from band to band by `stepDb` and whose mean is known to `levelSdDb`. */
function spectrumPrecision(bands: number, stepDb: number, levelSdDb: number): Float64Array {
  const precision = new Float64Array(bands * bands)
  precision.fill(1 / (levelSdDb * bands) ** 2)
  const step = 1 / (stepDb * stepDb)
  for (let b = 1; b < bands; b++) {
    precision[(b - 1) * bands + b - 1]! += step
    precision[b * bands + b]! += step
    precision[(b - 1) * bands + b]! -= step
    precision[b * bands + b - 1]! -= step
  }
  return precision
}
