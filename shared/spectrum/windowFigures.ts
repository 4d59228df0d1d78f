import { InputError } from '../base/errors'
import { windowPower } from './windows'

/** Harris's figures of merit of a window. */
export interface WindowFigures {
  /** Mean of the window: what a bin-centred sine's amplitude is multiplied by, 0 to 1. */
  readonly coherentGain: number
  /** Equivalent noise bandwidth in bins, 1 or more. */
  readonly noiseBandwidthBins: number
  /** Loss of a tone half-way between two bins, dB, positive. */
  readonly scallopLossDb: number
  /** Scallop loss plus the noise bandwidth in dB: the worst loss of a tone against noise. */
  readonly worstCaseLossDb: number
  /** Correlation of neighbouring segments that overlap by half, 0 to 1. */
  readonly halfOverlapCorrelation: number
}

/**
 * Figures of merit of a window, by their definitions.
 *
 *     ENBW = N·Σw² / (Σw)²,   scallop loss = −20·log10(|W(½)| / W(0)),   c(r) = Σ w[n]·w[n + (1−r)·N] / Σw²
 *
 * @param window At least 2 samples with a sum above 0.
 * @throws {InputError} fewer than 2 samples, or a sum that is not above 0.
 * @see Harris 1978. [Harris1978] in shared/base/sources.ts
 */
export function windowFigures(window: Float64Array): WindowFigures {
  const sum = window.reduce((total, w) => total + w, 0)
  if (window.length < 2 || !(sum > 0)) {
    throw new InputError(`window has ${window.length} samples that sum to ${sum}; at least 2 and a sum above 0 needed`)
  }
  const noiseBandwidthBins = (window.length * windowPower(window)) / sum ** 2
  const scallopLossDb = -20 * Math.log10(windowResponse(window, 0.5) / sum)
  return {
    coherentGain: sum / window.length,
    noiseBandwidthBins,
    scallopLossDb,
    worstCaseLossDb: scallopLossDb + 10 * Math.log10(noiseBandwidthBins),
    halfOverlapCorrelation: overlapCorrelation(window, 0.5),
  }
}

/**
 * Magnitude of a window's transform at a distance from its centre.
 *
 * @param offsetBins Distance in bins, any real number.
 * @returns |Σ w[n]·exp(−2πi·n·offset/N)|; at 0 the sum of the window.
 */
export function windowResponse(window: Float64Array, offsetBins: number): number {
  let re = 0
  let im = 0
  for (let n = 0; n < window.length; n++) {
    const angle = (2 * Math.PI * offsetBins * n) / window.length
    re += window[n]! * Math.cos(angle)
    im -= window[n]! * Math.sin(angle)
  }
  return Math.hypot(re, im)
}

/** Correlation of two windowed segments of white noise that share this part of their length (0 to 1). */
export function overlapCorrelation(window: Float64Array, overlap: number): number {
  const shift = Math.round(window.length * (1 - overlap))
  let sum = 0
  for (let n = shift; n < window.length; n++) sum += window[n]! * window[n - shift]!
  return sum / windowPower(window)
}
