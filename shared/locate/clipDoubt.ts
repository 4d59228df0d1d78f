import { CELL_SHARE, cellCost } from './cellCost'

/** Share of clips in which something else was heard that no air-off clip knows of: a step, a gust, a car. Chosen. */
const DISTURBED_SHARE = 0.1
/** Such a disturbance has a smooth spectrum: standard deviations of its level, tilt and curve as rms over the bands, dB. */
const DISTURBED_SMOOTH_SD_DB = [8, 4, 3] as const
/** Misfit of one band round that smooth spectrum, dB. Chosen. */
const DISTURBED_SD_DB = 2
/** Share where air passes below on its way from the inlet to the leak, with any spectrum that bubbles have. Chosen. */
const PASSED_SHARE = 0.02
const PASSED_SD_DB = 6

/**
 * Whether something else was heard in a whole clip.
 *
 * Either the sources and the floor explain it, or it was disturbed by something with a smooth spectrum, or air on its
 * way to the leak was heard in it.
 */
export class ClipDoubt {
  /** Orthonormal level, tilt and curve over octaves. */
  private readonly smooth: readonly Float64Array[]
  private readonly rough: Float64Array

  /** @param bandOctaves Octaves of each band over any frequency. */
  constructor(bandOctaves: Float64Array) {
    this.smooth = parabolas(bandOctaves)
    this.rough = new Float64Array(bandOctaves.length)
  }

  /**
   * @param explained What the clip costs when sources and floor explain it, nepers.
   * @param residuals Of each band, dB; 0 where its weight is 0.
   * @param weight    Of each band, 0 to 1.
   * @param isPassed  Whether air passes below on its way to the leak.
   * @returns What it costs with the doubt, nepers, and the probability that sources and floor explain it.
   */
  weigh({
    explained,
    residuals,
    weight,
    isPassed,
  }: {
    readonly explained: number
    readonly residuals: Float64Array
    readonly weight: Float64Array
    readonly isPassed: boolean
  }): { cost: number; trust: number } {
    const passed = isPassed ? PASSED_SHARE : 0
    const logExplained = Math.log(1 - DISTURBED_SHARE - passed) - explained
    const logDisturbed = Math.log(DISTURBED_SHARE) - this.disturbedCost(residuals, weight)
    const logPassed = passed > 0 ? Math.log(passed) - passedCost(residuals, weight) : Number.NEGATIVE_INFINITY
    const top = Math.max(logExplained, logDisturbed, logPassed)
    const log = top + Math.log(Math.exp(logExplained - top) + Math.exp(logDisturbed - top) + Math.exp(logPassed - top))
    return { cost: -log, trust: Math.exp(logExplained - log) }
  }

  /** Cost of a clip whose residuals are a smooth spectrum of some size and what is left over. */
  private disturbedCost(residuals: Float64Array, weight: Float64Array): number {
    const { rough } = this
    const bands = residuals.length
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
}

/** Cost of a clip in which bubbles on their way were heard: bands err widely and each by itself. */
function passedCost(residuals: Float64Array, weight: Float64Array): number {
  let cost = 0
  for (let b = 0; b < residuals.length; b++) {
    if (weight[b]! > 0) cost += CELL_SHARE * weight[b]! * cellCost(residuals[b]!, PASSED_SD_DB * PASSED_SD_DB)
  }
  return cost
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
