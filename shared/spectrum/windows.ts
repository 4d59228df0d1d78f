import { InputError } from '../base/errors'

/** The windows a spectrum may be taken through. `blackman-harris` is the four-term minimum one. */
export type WindowName = 'rectangular' | 'hann' | 'hamming' | 'blackman' | 'blackman-harris'

/**
 * Cosine coefficients a0, a1 … of w[n] = a0 − a1·cos(2πn/N) + a2·cos(4πn/N) − … in Harris's letters and digits
 * (his "Blackman" to two digits, 0.42, 0.50, 0.08; four-term Blackman-Harris, −92 dB). [Harris1978] in sources.ts
 */
const COEFFICIENTS: Record<WindowName, readonly number[]> = {
  rectangular: [1],
  hann: [0.5, 0.5],
  hamming: [0.54, 0.46],
  blackman: [0.42, 0.5, 0.08],
  'blackman-harris': [0.35875, 0.48829, 0.14128, 0.01168],
}

/**
 * Samples of a periodic window (the next sample after the last would be the first again), the form that belongs to a
 * discrete spectrum: its transform has exact zeros on bins.
 *
 * @param length In samples, a whole number, at least 1.
 * @returns Values from 0 (or a little below, by rounding) to 1.
 * @throws {InputError} length not a whole number of at least 1.
 * @see Harris 1978. [Harris1978] in shared/base/sources.ts
 */
export function windowSamples(name: WindowName, length: number): Float64Array {
  if (!(Number.isInteger(length) && length >= 1)) throw new InputError(`window length is ${length}; must be 1 or more`)
  const coefficients = COEFFICIENTS[name]
  return Float64Array.from({ length }, (_, n) => {
    const angle = (2 * Math.PI * n) / length
    return coefficients.reduce((sum, a, term) => sum + (term % 2 === 0 ? a : -a) * Math.cos(term * angle), 0)
  })
}

/** Sum of the squared window, the power a spectrum has to be divided by. */
export function windowPower(window: Float64Array): number {
  let sum = 0
  for (let n = 0; n < window.length; n++) sum += window[n]! * window[n]!
  return sum
}
