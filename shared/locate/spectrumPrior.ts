import { choleskyInPlace } from '../base/cholesky'
import type { NormalEquations } from './normalEquations'

/** What is believed of a spectrum: it wanders from band to band, and its mean is known to a degree. */
export class SpectrumPrior {
  private readonly precision: Float64Array

  /**
   * @param meanDb    Of each band, dB.
   * @param stepSdDb  From one band to the next, dB.
   * @param levelSdDb Of the mean over all bands, dB.
   */
  constructor(
    private readonly meanDb: Float64Array,
    stepSdDb: number,
    levelSdDb: number,
  ) {
    this.precision = spectrumPrecision(meanDb.length, stepSdDb, levelSdDb)
  }

  /** Adds its pull on the spectrum that stands at `at`. @returns its share of the objective. */
  assemble(at: number, shared: Float64Array, equations: NormalEquations): number {
    const { precision, meanDb } = this
    const bands = meanDb.length
    let objective = 0
    for (let a = 0; a < bands; a++) {
      let pull = 0
      for (let b = 0; b < bands; b++) {
        const p = precision[a * bands + b]!
        pull += p * (shared[at + b]! - meanDb[b]!)
        if (b <= a) equations.addShared(at + a, at + b, p)
      }
      objective += 0.5 * (shared[at + a]! - meanDb[a]!) * pull
      equations.addSharedSlope(at + a, -pull)
    }
    return objective
  }

  logDeterminant(): number {
    return choleskyInPlace(this.precision.slice(), this.meanDb.length) ?? 0
  }
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
