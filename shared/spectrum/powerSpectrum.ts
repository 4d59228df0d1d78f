import FFT from 'fft.js'
import { InputError } from '../base/errors'
import { type WindowName, windowPower, windowSamples } from './windows'

/** Samples as they stand in a clip, or in double precision. */
export type Samples = Float32Array | Float64Array

/**
 * A transform of one size. Complex arrays hold re and im in turns. Input and output must be different arrays; their
 * lengths are checked, because the engine reads past a short one and answers NaN.
 */
export interface Transform {
  readonly size: number
  /** `input`: `size` real samples; `output`: 2·size, of which bins 0 to size/2 are valid afterwards. */
  real(output: Float64Array, input: Float64Array): void
  /** `input` and `output`: 2·size. */
  complex(output: Float64Array, input: Float64Array): void
  /** The inverse of `complex`, divided by `size`. */
  inverse(output: Float64Array, input: Float64Array): void
}

/** Tables of one size cost more than a transform, and a clip needs three or four sizes: each is made once. */
const transforms = new Map<number, Transform>()

/**
 * The fast Fourier transform of a size; the only door to fft.js.
 *
 * @param size A power of two, 2 to 2²².
 * @throws {InputError} another size; at a call of the transform: an array of the wrong length.
 */
export function transformOfSize(size: number): Transform {
  const known = transforms.get(size)
  if (known !== undefined) return known
  if (!(size >= 2 && size <= 2 ** 22 && Math.log2(size) % 1 === 0)) {
    throw new InputError(`transform size is ${size}; must be a power of two from 2 to 4194304`)
  }
  const made = makeTransform(size)
  transforms.set(size, made)
  return made
}

/** Smallest power of two that holds `length` samples, at least 2. */
export function transformSizeFor(length: number): number {
  let size = 2
  while (size < length) size *= 2
  return size
}

/**
 * One-sided power spectrum of one frame.
 *
 *     P[k] = c·|Σ w[n]·x[n]·exp(−2πi·k·n/N)|² / (N·Σw²),   c = 1 at DC and Nyquist, 2 between,   k = 0 … N/2
 *
 * Scaled so that the bins sum to Σ(w·x)²/Σw² (Parseval): through the rectangular window exactly the mean square, through
 * any other its estimate. Padding with zeros up to the next power of two changes bins, never the sum.
 *
 * @param samples The frame, at least 2 finite samples.
 * @returns N/2 + 1 bins, ≥ 0, in units of full scale squared.
 * @throws {InputError} fewer than 2 samples; a sample that is not finite.
 * @example powerSpectrum(Float64Array.of(1, -1, 1, -1), 'rectangular') // [0, 0, 1]
 */
export function powerSpectrum(samples: Samples, windowName: WindowName = 'hann'): Float64Array {
  if (samples.length < 2) throw new InputError(`frame has ${samples.length} samples; at least 2 needed`)
  const window = windowSamples(windowName, samples.length)
  const transform = transformOfSize(transformSizeFor(samples.length))
  const input = new Float64Array(transform.size)
  for (let n = 0; n < samples.length; n++) input[n] = samples[n]! * window[n]!
  const output = new Float64Array(2 * transform.size)
  transform.real(output, input)
  const power = new Float64Array(transform.size / 2 + 1)
  oneSidedPower(power, output, 1 / (transform.size * windowPower(window)))
  mustBeFinite(power, 0)
  return power
}

/** One sample that is no number makes the whole spectrum none, DC included. @throws {InputError} it is none. */
export function mustBeFinite(power: Float64Array, start: number): void {
  if (!Number.isFinite(power[0]))
    throw new InputError(`the frame from sample ${start} on holds a number that is not finite`)
}

/**
 * Squared magnitudes of a real frame's transform, doubled between DC and Nyquist, times `scale`; nothing is checked, so
 * that it can stand in a loop.
 *
 * @param power Takes the result, N/2 + 1.
 * @param spectrum Re and im in turns, at least N/2 + 1 bins.
 */
export function oneSidedPower(power: Float64Array, spectrum: Float64Array, scale: number): void {
  const last = power.length - 1
  for (let k = 0; k <= last; k++) {
    const re = spectrum[2 * k]!
    const im = spectrum[2 * k + 1]!
    power[k] = 2 * scale * (re * re + im * im)
  }
  power[0]! /= 2
  power[last]! /= 2
}

function makeTransform(size: number): Transform {
  const engine = new FFT(size)
  const check = (array: Float64Array, length: number, what: string) => {
    if (array.length !== length) {
      throw new InputError(`${what} of a transform of ${size} has ${array.length} numbers; must have ${length}`)
    }
  }
  const checkComplex = (output: Float64Array, input: Float64Array) => {
    check(output, 2 * size, 'output')
    check(input, 2 * size, 'input')
  }
  return {
    size,
    real(output, input) {
      check(output, 2 * size, 'output')
      check(input, size, 'input')
      engine.realTransform(output, input)
    },
    complex(output, input) {
      checkComplex(output, input)
      engine.transform(output, input)
    },
    inverse(output, input) {
      checkComplex(output, input)
      engine.inverseTransform(output, input)
    },
  }
}
