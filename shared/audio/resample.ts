import { InputError } from '../base/errors'
import { kaiserBeta, kaiserHalfLength, kaiserWindow } from './kaiserWindow'

/** Share of the lower of the two Nyquist frequencies that comes through untouched; the stop band begins at 1. */
export const RESAMPLE_PASS_SHARE = 0.9

/** How far images and aliases stay down. */
const STOP_DB = 82 // 80 dB asked for, and 2 dB because Kaiser's length formula is a fit

/** Places between two samples at which the filter is worked out, when the exact ones are too many. */
const MOST_PHASES = 1024 // straight lines between them are wrong by π²/24 / 1024², −128 dB

/** Keeps the filter's length within reason. */
const WIDEST_RATIO = 256

/**
 * The same sound at another sample rate, by a polyphase windowed sinc.
 *
 * Flat within 0.01 dB up to 0.9 of the lower Nyquist frequency; images and aliases are at least 80 dB down. No delay:
 * output m lies at time m / toHz. Both ends are held, so a constant stays constant.
 *
 * @param samples Any length, any level, finite.
 * @param fromHz Rate of the samples; a whole number of Hz.
 * @param toHz Rate wanted; a whole number of Hz, at most 256 times more or less.
 * @returns ceil(length · toHz / fromHz) samples; a copy when the rates are one.
 * @throws {InputError} a rate that is not a whole number > 0; rates further apart than 256 times.
 * @see Kaiser 1974 for the filter. [Kaiser1974]
 */
export function resample(samples: Float32Array, fromHz: number, toHz: number): Float32Array {
  for (const rateHz of [fromHz, toHz]) {
    if (!(Number.isInteger(rateHz) && rateHz > 0))
      throw new InputError(`rate is ${rateHz}; must be a whole number of Hz`)
  }
  if (Math.max(fromHz / toHz, toHz / fromHz) > WIDEST_RATIO) {
    throw new InputError(`rates ${fromHz} and ${toHz} Hz lie further apart than ${WIDEST_RATIO} times`)
  }
  if (fromHz === toHz || samples.length === 0) return samples.slice()
  const common = greatestCommonDivisor(fromHz, toHz)
  return convert(samples, fromHz / common, toHz / common)
}

/** Output m lies `down`·m / `up` input samples in. */
function convert(samples: Float32Array, down: number, up: number): Float32Array {
  const { rows, half, phases } = filterRows(up, Math.min(1, up / down))
  const held = hold(samples, half)
  const out = new Float32Array(Math.ceil((samples.length * up) / down))
  const width = 2 * half
  for (let m = 0; m < out.length; m++) {
    const at = m * down
    const whole = Math.floor(at / up)
    const phase = ((at - whole * up) / up) * phases
    const row = phases === up ? Math.round(phase) : Math.floor(phase)
    const between = phases === up ? 0 : phase - row
    const here = dot(rows, row * width, held, whole, width)
    out[m] = between === 0 ? here : here + between * (dot(rows, (row + 1) * width, held, whole, width) - here)
  }
  return out
}

/**
 * One row of taps for each place between two samples; the last row is the first one, a sample later.
 *
 * @param up Exact number of places.
 * @param squeeze The lower rate over the old one, ≤ 1.
 */
function filterRows(up: number, squeeze: number): { rows: Float64Array; half: number; phases: number } {
  const beta = kaiserBeta(STOP_DB)
  const reach = kaiserHalfLength(STOP_DB, (1 - RESAMPLE_PASS_SHARE) * 0.5 * squeeze)
  const cut = 0.5 * (1 + RESAMPLE_PASS_SHARE) * squeeze
  const half = Math.ceil(reach) + 1
  // A slower filter bends less between two samples, so it needs fewer places.
  const phases = Math.min(up, Math.ceil(MOST_PHASES * squeeze))
  const rows = new Float64Array((phases + 1) * 2 * half)
  for (let p = 0; p <= phases; p++) {
    let sum = 0
    for (let k = 0; k < 2 * half; k++) {
      const off = k - half + 1 - p / phases
      const tap = sinc(cut * off) * kaiserWindow(off / reach, beta)
      rows[p * 2 * half + k] = tap
      sum += tap
    }
    for (let k = 0; k < 2 * half; k++) rows[p * 2 * half + k]! /= sum
  }
  return { rows, half, phases }
}

/** The samples with `half` held ones on either side; tap k of output place i meets held[i + k] (i the sample before). */
function hold(samples: Float32Array, half: number): Float32Array {
  const held = new Float32Array(samples.length + 2 * half)
  held.fill(samples[0]!, 0, half - 1)
  held.set(samples, half - 1)
  held.fill(samples[samples.length - 1]!, half - 1 + samples.length)
  return held
}

function dot(rows: Float64Array, row: number, held: Float32Array, from: number, width: number): number {
  let even = 0
  let odd = 0
  for (let k = 0; k < width; k += 2) {
    even += rows[row + k]! * held[from + k]!
    odd += rows[row + k + 1]! * held[from + k + 1]!
  }
  return even + odd
}

/** sin(πx) / πx. */
function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x)
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b)
}
