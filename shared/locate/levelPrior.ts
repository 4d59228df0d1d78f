import type { GroundPrior } from '../ground/groundPrior'
import { EXPECTED_SQUARE } from './cellCost'
import { type FitModel, type ShapeLayout, shapePrior } from './fitModel'
import { type NormalEquations, OWN } from './normalEquations'
import type { Parameters } from './parameters'
import { SpectrumPrior } from './spectrumPrior'

/** Gain between settings-down, dB. Chosen within 2 to 6 dB for hand-placed sensors (common practice, no source). */
const GAIN_SD_DB = 2.5
/** Tilt between settings-down, dB per octave. Chosen. */
const TILT_SD_DB = 1
/** What all bands of a floor change together from an air-off clip to the air-on clip beside it, dB. Chosen. */
const FLOOR_CHANGE_SD_DB = 0.6
/** Degrees of freedom of the t-distribution of gain, tilt and floor: one setting-down may be badly off. Chosen. */
const OWN_FREEDOM = 7
/** A source's spectrum from one band to the next, dB. Chosen. */
const SPECTRUM_STEP_DB = 4
/** A source's mean level right above it against the floor. Chosen: from well below hearing to very loud. */
const SOURCE_OVER_FLOOR_DB = { mean: 8, sd: 12 }
/** The floor's spectrum from one band to the next, and its mean against the first guess, dB. Chosen. */
const FLOOR_STEP_DB = 3
const FLOOR_LEVEL_SD_DB = 4

/** What is believed of all numbers of a fit before the levels speak. */
export class LevelPrior {
  private readonly shape: { readonly mean: Float64Array; readonly sd: Float64Array }
  private readonly ownSd: readonly number[]
  private readonly source: SpectrumPrior
  private readonly floor: SpectrumPrior
  private readonly bands: number

  constructor(
    private readonly model: FitModel,
    private readonly layout: ShapeLayout,
    private readonly sourceCount: number,
    ground: GroundPrior,
  ) {
    const { floorDb, noise } = model
    this.bands = floorDb.length
    this.shape = shapePrior(model, ground)
    this.ownSd = [GAIN_SD_DB, TILT_SD_DB, noise.floor.levelSdDb, noise.floor.tiltSdDb, FLOOR_CHANGE_SD_DB]
    const sourceDb = floorDb.reduce((sum, db) => sum + db, 0) / this.bands + SOURCE_OVER_FLOOR_DB.mean
    this.source = new SpectrumPrior(
      floorDb.map(() => sourceDb),
      SPECTRUM_STEP_DB,
      SOURCE_OVER_FLOOR_DB.sd,
    )
    this.floor = new SpectrumPrior(floorDb, FLOOR_STEP_DB, FLOOR_LEVEL_SD_DB)
  }

  /** Middle of the shape's numbers. */
  get shapeMean(): Float64Array {
    return this.shape.mean
  }

  /** ln of the normalisation: what must be added to compare models with different numbers of sources. */
  logNorm(): number {
    let log = 0
    for (const sd of this.shape.sd) log -= Math.log(sd)
    for (const sd of this.ownSd) log -= this.model.settings.length * Math.log(sd)
    return log + 0.5 * this.sourceCount * this.source.logDeterminant()
  }

  /** Adds its pull on all numbers, as it is or as it is on average. @returns its share of the objective. */
  assemble({ shared, own }: Parameters, equations: NormalEquations, onAverage: boolean): number {
    let objective = 0
    for (let i = 0; i < this.layout.count; i++) {
      const precision = 1 / this.shape.sd[i]! ** 2
      const off = shared[i]! - this.shape.mean[i]!
      objective += 0.5 * precision * off * off
      equations.addShared(i, i, precision)
      equations.addSharedSlope(i, -precision * off)
    }
    for (let j = 0; j < this.sourceCount; j++) {
      objective += this.source.assemble(this.layout.count + j * this.bands, shared, equations)
    }
    objective += this.floor.assemble(this.layout.count + this.sourceCount * this.bands, shared, equations)
    for (let i = 0; i < own.length; i++) {
      const value = own[i]!
      const sd = this.ownSd[i % OWN]!
      const square = (value / sd) ** 2
      const precision = (OWN_FREEDOM + 1) / (OWN_FREEDOM + (onAverage ? EXPECTED_SQUARE : square)) / (sd * sd)
      objective += 0.5 * (OWN_FREEDOM + 1) * Math.log(1 + square / OWN_FREEDOM)
      equations.addOwn(Math.floor(i / OWN), i % OWN, precision, -precision * value)
    }
    return objective
  }
}
