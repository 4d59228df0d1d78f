import type { GroundPrior } from '../ground/groundPrior'
import type { Cell } from './cell'
import { CELL_FREEDOM, CELL_SHARE, cellCost, EXPECTED_SQUARE } from './cellCost'
import { ClipDoubt } from './clipDoubt'
import { ExpectedPower, NEPERS_PER_DB } from './expectedPower'
import { type FitModel, type Noise, type ShapeLayout, shapeLayout } from './fitModel'
import { LevelPrior } from './levelPrior'
import { ModelRow } from './modelRow'
import { NoiseLearnt } from './noiseLearnt'
import { type NormalEquations, OWN } from './normalEquations'
import type { Parameters } from './parameters'
import type { TriedSource } from './triedSource'

/** A guessed source is so far below the floor where nothing was heard, and so far over it at most, dB. Chosen. */
const GUESS_OVER_FLOOR_DB = { least: -3, most: 40 }

/** A clip of a sweep at which a fit stands. */
interface ClipAt {
  readonly k: number
  readonly air: 'on' | 'off'
  readonly parameters: Parameters
  readonly equations: NormalEquations
}

/**
 * What the levels of a sweep should be for sources at given places, and how far they are from it:
 *
 *     level[k, b] = 10·log10( Σ_sources 10^((S[b] + drift·walk[k] + gain[k] + tilt[k]·oct[b] + T[k, b])/10) + floor )
 *
 * with the floor taken from the air-off clip of the same setting-down where there is one, and otherwise a floor a band
 * with an offset a setting-down (`ExpectedPower`). T is the ground's transfer. Residuals are t-distributed, so one odd
 * band or one setting-down cannot pull the rest.
 */
export class LevelModel {
  readonly size: number
  /** Whether a whole clip may be disturbed; off while a fit is still far from its end. */
  doubtsClips = true
  /**
   * Whether cells weigh by what a t-distributed residual tells on average instead of by what this one tells. Evidence is
   * worked out so: otherwise a place where nothing is off would be charged for being sure of it.
   */
  weighsExpected = false
  private readonly layout: ShapeLayout
  private readonly bands: number
  private readonly settings: number
  private readonly floorAt: number
  private readonly prior: LevelPrior
  private readonly expected: ExpectedPower
  private readonly doubt: ClipDoubt
  /** One a band, of the clip at hand. */
  private readonly rows: readonly ModelRow[]
  private readonly residuals: Float64Array
  private readonly shares: Float64Array
  private readonly weights: Float64Array
  private readonly cell: Cell = { k: 0, b: 0, air: 'on', toldDb: null }
  private learning: NoiseLearnt | null = null
  private squares = 0
  private squaresWeight = 0

  constructor(
    private readonly model: FitModel,
    private readonly sources: readonly TriedSource[],
    ground: GroundPrior,
  ) {
    const layout = shapeLayout(model)
    const expected = new ExpectedPower(model, layout, sources)
    this.layout = layout
    this.expected = expected
    this.bands = model.bandKhz.length
    this.settings = model.settings.length
    this.floorAt = layout.count + sources.length * this.bands
    this.size = this.floorAt + this.bands
    this.prior = new LevelPrior(model, layout, sources.length, ground)
    this.doubt = new ClipDoubt(model.bandOctaves)
    this.rows = Array.from({ length: this.bands }, () => new ModelRow(model, layout, sources, expected))
    this.residuals = new Float64Array(this.bands)
    this.shares = new Float64Array(this.bands)
    this.weights = new Float64Array(this.bands)
  }

  /** The prior's middle, with spectra guessed from the levels: a cold start. */
  guess(): Parameters {
    const parameters = { shared: new Float64Array(this.size), own: new Float64Array(this.settings * OWN) }
    parameters.shared.set(this.prior.shapeMean)
    parameters.shared.set(this.model.floorDb, this.floorAt)
    this.expected.prepare(parameters.shared)
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
      const floorDb = this.model.floorDb[b]!
      let db = floorDb + GUESS_OVER_FLOOR_DB.least
      if (nearest) {
        const on = this.model.settings[nearest.k]!.on!
        const moved = this.expected.transferOf(j, nearest.k, b)
        const most = floorDb + GUESS_OVER_FLOOR_DB.most
        if (on.weight[b]! > 0) db = Math.max(db, Math.min(on.levelDb[b]! - moved.db, most))
      }
      parameters.shared[this.layout.count + j * this.bands + b] = db
    }
  }

  /** ln of the prior's normalisation: what must be added to compare models with different numbers of sources. */
  logPriorNorm(): number {
    return this.prior.logNorm()
  }

  /** rms of the weighted air-on residuals where `assemble` last stood, dB. */
  residualDb(): number {
    return this.squaresWeight > 0 ? Math.sqrt(this.squares / this.squaresWeight) : 0
  }

  /** How far the levels scatter at these parameters, band by band. */
  noise(parameters: Parameters, equations: NormalEquations): Noise {
    const learning = new NoiseLearnt(this.bands)
    this.learning = learning
    this.assemble(parameters, equations)
    this.learning = null
    return learning.noise(this.model.noise.floor)
  }

  /** Fills the normal equations at the given parameters. @returns the objective: −ln of the posterior, less constants. */
  assemble(parameters: Parameters, equations: NormalEquations): number {
    equations.clear()
    this.squares = 0
    this.squaresWeight = 0
    this.expected.prepare(parameters.shared)
    let objective = this.prior.assemble(parameters, equations, this.weighsExpected)
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
    this.expected.prepare(parameters.shared)
    return Array.from({ length: leaks }, (_, j) =>
      Float64Array.from({ length: this.settings }, (_, k) => this.leakOverFloorDb(j, leaks, k, parameters)),
    )
  }

  private leakOverFloorDb(j: number, leaks: number, k: number, parameters: Parameters): number {
    const { power } = this.expected
    let best = Number.NEGATIVE_INFINITY
    for (let b = 0; b < this.bands; b++) {
      let rest = this.expected.of(this.cellAt(k, b, 'on'), parameters)
      for (let i = 0; i < leaks; i++) rest -= power[i]!
      best = Math.max(best, Math.log(power[j]! / rest) / NEPERS_PER_DB)
    }
    return best
  }

  private cellAt(k: number, b: number, air: 'on' | 'off'): Cell {
    const { cell } = this
    const { toldFloorDb, noise } = this.model
    const told = air === 'on' && noise.floor.isTold ? toldFloorDb[k]! : null
    cell.k = k
    cell.b = b
    cell.air = air
    cell.toldDb = told !== null && told.weight[b]! > 0 ? told.levelDb[b]! : null
    return cell
  }

  /** One clip: adds its rows, weighed by the probability that sources and floor explain it. @returns its share of the objective. */
  private clip(at: ClipAt): number {
    const { k, air } = at
    const { weight } = this.model.settings[k]![air]!
    const explained = this.explain(at)
    if (!this.doubtsClips) {
      this.addRows(at, 1)
      return explained
    }
    const isPassed = air === 'on' && (this.sources[0]?.passedBy?.[k] ?? false)
    const { cost, trust } = this.doubt.weigh({ explained, residuals: this.residuals, weight, isPassed })
    this.addRows(at, trust)
    return cost
  }

  /** Works out residuals, weights and rows of a clip. @returns what it costs when sources and floor explain it. */
  private explain({ k, air, parameters }: ClipAt): number {
    const clip = this.model.settings[k]![air]!
    const { noise, toldSdDb } = this.model
    let cost = 0
    for (let b = 0; b < this.bands; b++) {
      this.residuals[b] = 0
      if (clip.weight[b]! === 0) continue
      const cell = this.cellAt(k, b, air)
      const total = this.expected.of(cell, parameters)
      const residual = clip.levelDb[b]! - Math.log(total) / NEPERS_PER_DB
      const sourceShare = this.rows[b]!.fill(cell, total, parameters)
      const floorSd = cell.toldDb === null ? noise.floorSdDb[b]! : toldSdDb[b]!
      const variance = floorSd * floorSd + (sourceShare * noise.sourceSdDb[b]!) ** 2
      const share = CELL_SHARE * clip.weight[b]!
      this.shares[b] = sourceShare
      this.residuals[b] = residual
      const square = this.weighsExpected ? EXPECTED_SQUARE : (residual * residual) / variance
      this.weights[b] = (share * (CELL_FREEDOM + 1)) / (CELL_FREEDOM + square) / variance
      cost += share * cellCost(residual, variance)
    }
    return cost
  }

  private addRows({ k, air, equations }: ClipAt, trust: number): void {
    const clip = this.model.settings[k]![air]!
    for (let b = 0; b < this.bands; b++) {
      if (clip.weight[b]! === 0) continue
      const residual = this.residuals[b]!
      if (this.learning !== null && trust > 0.5) {
        const isTold = this.cellAt(k, b, air).toldDb !== null
        this.learning.note(b, residual, { sourceShare: this.shares[b]!, isTold })
      }
      if (air === 'on') {
        this.squares += clip.weight[b]! * trust * residual ** 2
        this.squaresWeight += clip.weight[b]! * trust
      }
      const { row } = this.rows[b]!
      equations.addRow(k, row, residual, trust * this.weights[b]!)
    }
  }
}
