import type { Ground } from '../ground/transfer'
import { type FitModel, type ShapeLayout, STRETCH, STRETCH_AT, SURFACE_AT } from './fitModel'

/** However far the exponent bends with frequency, sound falls off at least so. Chosen. */
const LEAST_SPREADING = 0.1

type Filled = { -readonly [key in keyof Ground]-?: number }

/** Octaves squared, less their middle: what the curve of the spreading multiplies. */
export function spreadingCurve(octaves: number): number {
  return octaves * octaves - 2
}

/** The ground as each stretch and band see it, for leaks and for sources at the surface. */
export class GroundTable {
  private readonly bands: number
  private readonly leak: readonly Filled[]
  private readonly surface: readonly Filled[]
  private readonly curve: Float64Array

  constructor(
    private readonly model: FitModel,
    private readonly layout: ShapeLayout,
  ) {
    this.bands = model.bandKhz.length
    this.leak = emptyGrounds(model.stretchCovers.length * this.bands)
    this.surface = emptyGrounds(model.stretchCovers.length * this.bands)
    this.curve = model.bandOctaves.map(spreadingCurve)
  }

  /** The ground under setting-down `k` in band `b`. */
  at(k: number, b: number, isLeak: boolean): Ground {
    return (isLeak ? this.leak : this.surface)[this.model.stretchOf[k]! * this.bands + b]!
  }

  /** Works the whole table out for a fit's shared numbers. */
  prepare(shared: Float64Array): void {
    for (let s = 0; s < this.model.stretchCovers.length; s++) this.prepareStretch(s, shared)
  }

  private prepareStretch(s: number, shared: Float64Array): void {
    const { layout, bands, model } = this
    const hasStretches = model.stretchCovers.length > 1
    const at = layout.stretch + STRETCH * s
    const logAbsorption = shared[layout.logAbsorption]! + (hasStretches ? shared[at + STRETCH_AT.logAbsorption]! : 0)
    const absorption = Math.exp(logAbsorption)
    const pipeLevel = shared[layout.pipeLevel]! + (hasStretches ? shared[at + STRETCH_AT.pipeLevel]! : 0)
    const pipeLoss = Math.exp(shared[layout.logPipeLoss]!)
    const slabLoss = Math.exp(shared[layout.logSlabLoss]!)
    for (let b = 0; b < bands; b++) {
      const leak = this.leak[s * bands + b]!
      leak.spreading = Math.max(
        LEAST_SPREADING,
        shared[layout.spreading]! +
          shared[layout.spreadingTilt]! * model.bandOctaves[b]! +
          shared[layout.spreadingCurve]! * this.curve[b]!,
      )
      leak.absorptionDbPerMKhz = absorption
      leak.pipeLevelDb = pipeLevel
      leak.pipeLossDbPerM = shared[layout.pipeLoss]!
      leak.pipeLossDbPerMKhz = pipeLoss
      leak.slabLevelDb = shared[layout.slabLevel]!
      leak.slabLossDbPerM = slabLoss
      const surface = this.surface[s * bands + b]!
      surface.spreading = Math.max(LEAST_SPREADING, leak.spreading + shared[layout.surface + SURFACE_AT.spreading]!)
      surface.absorptionDbPerMKhz = absorption * Math.exp(shared[layout.surface + SURFACE_AT.logAbsorption]!)
      surface.pipeLossDbPerM = leak.pipeLossDbPerM
      surface.pipeLevelDb = pipeLevel + shared[layout.surface + SURFACE_AT.pipeLevel]!
      surface.pipeLossDbPerMKhz = pipeLoss
      surface.slabLevelDb = leak.slabLevelDb
      surface.slabLossDbPerM = slabLoss
    }
  }
}

function emptyGrounds(count: number): Filled[] {
  return Array.from({ length: count }, () => ({
    spreading: 0,
    absorptionDbPerMKhz: 0,
    pipeLevelDb: 0,
    pipeLossDbPerMKhz: 0,
    pipeLossDbPerM: 0,
    slabLevelDb: 0,
    slabLossDbPerM: 0,
  }))
}
