import { noPaths, noTransfer, type Paths, preparePaths, type Transfer, transfer } from '../ground/transfer'
import type { Cell } from './cell'
import { type FitModel, hasSlabEdge, MIDDLE_KHZ, type ShapeLayout, STRETCH, STRETCH_AT } from './fitModel'
import { GroundTable } from './groundTable'
import { OWN, OWN_AT } from './normalEquations'
import type { Parameters } from './parameters'
import type { TriedSource } from './triedSource'

export const NEPERS_PER_DB = Math.LN10 / 10

/** Whether the floor may have changed since an air-off clip of the same setting-down. */
export function hasChanged({ k, air }: Cell, { settings }: FitModel): boolean {
  return air === 'on' && settings[k]!.off !== null
}

/** Power that sources and floor should have in a cell. */
export class ExpectedPower {
  /** Of each source in the cell asked for last. */
  readonly power: Float64Array
  /** How each source reached the cell asked for last. */
  readonly moved: readonly Transfer[]
  private readonly paths: readonly Paths[][]
  private readonly grounds: GroundTable
  private readonly bands: number
  private readonly floorAt: number
  private readonly hasStretches: boolean
  private readonly hasSlabEdge: boolean

  constructor(
    private readonly model: FitModel,
    private readonly layout: ShapeLayout,
    private readonly sources: readonly TriedSource[],
  ) {
    this.bands = model.bandKhz.length
    this.floorAt = layout.count + sources.length * this.bands
    this.power = new Float64Array(sources.length)
    this.moved = sources.map(noTransfer)
    this.paths = sources.map((source) => source.geometry.map(noPaths))
    this.grounds = new GroundTable(model, layout)
    this.hasStretches = model.stretchCovers.length > 1
    this.hasSlabEdge = hasSlabEdge(model)
  }

  /** To be called whenever the shared numbers have moved. */
  prepare(shared: Float64Array): void {
    const ratio = Math.exp(shared[this.layout.logDepthRatio]!)
    for (let j = 0; j < this.sources.length; j++) {
      const { geometry } = this.sources[j]!
      for (let k = 0; k < geometry.length; k++) preparePaths(geometry[k]!, ratio, this.paths[j]![k]!)
    }
    this.grounds.prepare(shared)
  }

  /** How source `j` reaches setting-down `k` in band `b`. */
  transferOf(j: number, k: number, b: number): Transfer {
    const ground = this.grounds.at(k, b, this.sources[j]!.kind === 'leak')
    return transfer(ground, this.paths[j]![k]!, this.model.bandKhz[b]!, this.moved[j]!)
  }

  /** Whether a setting-down stands on a slab and others do not. */
  isOnSlab(k: number): boolean {
    return this.hasSlabEdge && this.model.stretchCovers[this.model.stretchOf[k]!] === 'slab'
  }

  /** Power of all together; leaves each source's in `power` and its transfer in `moved`. */
  of(cell: Cell, { shared, own }: Parameters): number {
    const { k, b, air, toldDb } = cell
    const { layout } = this
    const { sweepIndex, walk } = this.model.settings[k]!
    const gainDb = own[k * OWN + OWN_AT.gain]! + own[k * OWN + OWN_AT.tilt]! * this.model.bandOctaves[b]!
    const changeDb = hasChanged(cell, this.model) ? own[k * OWN + OWN_AT.floorChange]! : 0
    const floorDb = (toldDb ?? this.ownFloorDb(k, b, gainDb, { shared, own })) + changeDb
    const coupledDb =
      gainDb + this.stretchDb(k, b, shared) + (sweepIndex > 0 ? shared[layout.sweepSource + sweepIndex - 1]! : 0)
    const driftDb = shared[layout.drift + sweepIndex]! * walk
    let total = Math.exp(NEPERS_PER_DB * floorDb)
    for (let j = 0; j < this.sources.length; j++) {
      // Told noises stand in an air-off clip already; leak and inlet sound only with the air on.
      const isNoise = this.sources[j]!.kind === 'noise'
      if (isNoise ? toldDb !== null : air === 'off') {
        this.power[j] = 0
        continue
      }
      const movedDb = this.transferOf(j, k, b).db
      const sourceDb = shared[layout.count + j * this.bands + b]! + movedDb + coupledDb + (isNoise ? 0 : driftDb)
      this.power[j] = Math.exp(NEPERS_PER_DB * sourceDb)
      total += this.power[j]!
    }
    return total
  }

  /** The floor where no air-off clip tells it, before it changed, dBFS. */
  private ownFloorDb(k: number, b: number, gainDb: number, { shared, own }: Parameters): number {
    const { sweepIndex } = this.model.settings[k]!
    return (
      shared[this.floorAt + b]! +
      shared[this.layout.floorCoupling]! * gainDb +
      own[k * OWN + OWN_AT.floor]! +
      own[k * OWN + OWN_AT.floorTilt]! * this.model.bandOctaves[b]! +
      (sweepIndex > 0 ? shared[this.layout.sweepFloor + sweepIndex - 1]! : 0)
    )
  }

  /** What sounds from below read at a setting-down for the stretch it stands on, dB. */
  private stretchDb(k: number, b: number, shared: Float64Array): number {
    if (!this.hasStretches) return 0
    const at = this.layout.stretch + STRETCH * this.model.stretchOf[k]!
    const response = this.isOnSlab(k) ? shared[this.layout.slabResponse + b]! : 0
    const loss = shared[at + STRETCH_AT.loss]! * (this.model.bandKhz[b]! - MIDDLE_KHZ)
    return shared[at + STRETCH_AT.level]! - loss + response
  }
}
