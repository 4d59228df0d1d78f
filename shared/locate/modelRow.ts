import type { Cell } from './cell'
import { type ExpectedPower, hasChanged } from './expectedPower'
import { type FitModel, MIDDLE_KHZ, type ShapeLayout, STRETCH, STRETCH_AT, SURFACE_AT } from './fitModel'
import { spreadingCurve } from './groundTable'
import { OWN, OWN_AT, type SparseRow } from './normalEquations'
import type { Parameters } from './parameters'
import type { TriedSource } from './triedSource'

/** A source that gives less than this share of a level does not move it. Chosen: 0.0004 dB. */
const LEAST_SHARE = 1e-4
/** Numbers of the ground, which stand first: from spreading to the pipe's steady loss. */
const GROUND = 8

/** A cell's derivatives. */
export class ModelRow {
  readonly row: SparseRow

  constructor(
    private readonly model: FitModel,
    private readonly layout: ShapeLayout,
    private readonly sources: readonly TriedSource[],
    private readonly expected: ExpectedPower,
  ) {
    const most = layout.drift + 3 + STRETCH + 1 + sources.length + 1
    this.row = {
      columns: new Int32Array(most),
      values: new Float64Array(most),
      own: new Float64Array(OWN),
      count: 0,
    }
  }

  /**
   * Fills the row from what `expected` left, columns in rising order.
   *
   * @param total Power of all together.
   * @returns The sources' share of it.
   */
  fill(cell: Cell, total: number, parameters: Parameters): number {
    const { row, layout } = this
    const { k, b, toldDb } = cell
    const sourceShare = this.shareOf(total)
    const isHeard = sourceShare > LEAST_SHARE
    const floorShare = toldDb === null ? 1 - sourceShare : 0
    const { sweepIndex } = this.model.settings[k]!
    row.count = 0
    if (isHeard) this.fillGround(b, total)
    const octaves = this.model.bandOctaves[b]!
    const coupling = floorShare * parameters.shared[layout.floorCoupling]!
    if (floorShare > 0) {
      const { own } = parameters
      this.put(layout.floorCoupling, floorShare * (own[k * OWN + OWN_AT.gain]! + own[k * OWN + OWN_AT.tilt]! * octaves))
    }
    if (isHeard) {
      this.fillSlab(total)
      this.fillSurface(total)
      this.fillSweep(k, total, sourceShare)
    }
    if (floorShare > 0 && sweepIndex > 0) this.put(layout.sweepFloor + sweepIndex - 1, floorShare)
    if (isHeard) {
      this.fillStretch(k, b, sourceShare)
      this.fillSpectra(b, total)
    }
    if (floorShare > 0) this.put(layout.count + this.sources.length * this.model.bandKhz.length + b, floorShare)
    row.own[OWN_AT.gain] = (isHeard ? sourceShare : 0) + coupling
    row.own[OWN_AT.tilt] = row.own[OWN_AT.gain]! * octaves
    row.own[OWN_AT.floor] = floorShare
    row.own[OWN_AT.floorTilt] = floorShare * octaves
    row.own[OWN_AT.floorChange] = hasChanged(cell, this.model) ? 1 - sourceShare : 0
    return sourceShare
  }

  private put(column: number, value: number): void {
    const { row } = this
    row.columns[row.count] = column
    row.values[row.count++] = value
  }

  private shareOf(total: number): number {
    let share = 0
    for (let j = 0; j < this.sources.length; j++) share += this.expected.power[j]! / total
    return share
  }

  /** The numbers of the ground, which stand first. */
  private fillGround(b: number, total: number): void {
    const { layout, row } = this
    const { columns, values } = row
    values.fill(0, 0, GROUND)
    for (let i = 0; i < GROUND; i++) columns[i] = i
    for (let j = 0; j < this.sources.length; j++) {
      const share = this.expected.power[j]! / total
      if (share === 0) continue
      const moved = this.expected.moved[j]!
      values[layout.spreading]! += share * moved.bySpreading
      values[layout.logAbsorption]! += share * moved.byLogAbsorption
      values[layout.pipeLevel]! += share * moved.byPipeLevel
      values[layout.logPipeLoss]! += share * moved.byLogPipeLoss
      values[layout.logDepthRatio]! += share * moved.byLogDepth
      values[layout.pipeLoss]! += share * moved.byPipeLoss
    }
    const octaves = this.model.bandOctaves[b]!
    values[layout.spreadingTilt] = values[layout.spreading]! * octaves
    values[layout.spreadingCurve] = values[layout.spreading]! * spreadingCurve(octaves)
    row.count = GROUND
  }

  /** The two numbers of slabs, for a listener on one. */
  private fillSlab(total: number): void {
    let byLevel = 0
    let byLoss = 0
    for (let j = 0; j < this.sources.length; j++) {
      const share = this.expected.power[j]! / total
      if (share === 0) continue
      byLevel += share * this.expected.moved[j]!.bySlabLevel
      byLoss += share * this.expected.moved[j]!.byLogSlabLoss
    }
    if (byLevel === 0) return
    this.put(this.layout.slabLevel, byLevel)
    this.put(this.layout.logSlabLoss, byLoss)
  }

  /** The numbers in which sources at the surface differ. */
  private fillSurface(total: number): void {
    let [bySpreading, byAbsorption, byPipe, heard] = [0, 0, 0, 0]
    for (let j = 0; j < this.sources.length; j++) {
      if (this.sources[j]!.kind === 'leak') continue
      const share = this.expected.power[j]! / total
      const moved = this.expected.moved[j]!
      heard += share
      bySpreading += share * moved.bySpreading
      byAbsorption += share * moved.byLogAbsorption
      byPipe += share * moved.byPipeLevel
    }
    if (heard <= LEAST_SHARE) return
    const at = this.layout.surface
    this.put(at + SURFACE_AT.spreading, bySpreading)
    this.put(at + SURFACE_AT.logAbsorption, byAbsorption)
    this.put(at + SURFACE_AT.pipeLevel, byPipe)
  }

  /** Drift of what sounds only with the air on, and the sources' level in a later sweep. */
  private fillSweep(k: number, total: number, sourceShare: number): void {
    const { sweepIndex, walk } = this.model.settings[k]!
    let airShare = 0
    for (let j = 0; j < this.sources.length; j++) {
      if (this.sources[j]!.kind !== 'noise') airShare += this.expected.power[j]! / total
    }
    this.put(this.layout.drift + sweepIndex, airShare * walk)
    if (sweepIndex > 0) this.put(this.layout.sweepSource + sweepIndex - 1, sourceShare)
  }

  private fillStretch(k: number, b: number, sourceShare: number): void {
    const { layout, model } = this
    if (model.stretchCovers.length <= 1) return
    const { values } = this.row
    const at = layout.stretch + STRETCH * model.stretchOf[k]!
    this.put(at + STRETCH_AT.level, sourceShare)
    this.put(at + STRETCH_AT.loss, -(model.bandKhz[b]! - MIDDLE_KHZ) * sourceShare)
    this.put(at + STRETCH_AT.logAbsorption, values[layout.logAbsorption]!)
    this.put(at + STRETCH_AT.pipeLevel, values[layout.pipeLevel]!)
    if (this.expected.isOnSlab(k)) this.put(layout.slabResponse + b, sourceShare)
  }

  private fillSpectra(b: number, total: number): void {
    const bands = this.model.bandKhz.length
    for (let j = 0; j < this.sources.length; j++) {
      this.put(this.layout.count + j * bands + b, this.expected.power[j]! / total)
    }
  }
}
