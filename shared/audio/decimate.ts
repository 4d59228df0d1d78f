import { InputError } from '../base/errors'
import { kaiserBeta, kaiserHalfLength, kaiserWindow } from './kaiserWindow'

/** Share of the new Nyquist frequency that comes through untouched and free of aliases. */
export const DECIMATE_PASS_SHARE = 0.8 // chosen: a sharper edge costs time in proportion and no band needs it

/** How far an alias stays down. */
const STOP_DB = 84 // 80 dB asked for; Kaiser's length is a fit, and the aliases of two steps add up

/** Keeps the filters of large primes within reason. */
const MOST = 4096

/** Outputs of a block. */
const BLOCK = 2048

/** Outputs worked on together, so that each sample is fetched once for all of them. */
const TILE = 4

/**
 * Every `factor`-th sample after a low-pass, for low bands and slow envelopes.
 *
 * Flat within 0.01 dB up to 0.8 of the new Nyquist frequency, and what aliases into that range is at least 80 dB down;
 * between 0.8 and 1 of the new Nyquist frequency the response falls and aliases come in. No delay: output m lies at
 * input m·factor. Both ends are held, so a constant stays constant. The factor is worked off in steps of 4, 3, 2 and
 * what primes are left, each with a linear-phase filter only as sharp as its step needs.
 *
 * @param samples Any length, any level, finite.
 * @param factor Whole number, 1 (a copy) to 4096.
 * @returns ceil(length / factor) samples, at the old rate over `factor`.
 * @throws {InputError} a factor that is not a whole number from 1 to 4096.
 * @see Kaiser 1974 for the filters. [Kaiser1974]
 * @example decimate(samplesAt48kHz, 12) // samples at 4 kHz, good to 1.6 kHz
 */
export function decimate(samples: Float32Array, factor: number): Float32Array {
  if (!(Number.isInteger(factor) && factor >= 1 && factor <= MOST)) {
    throw new InputError(`decimation factor is ${factor}; must be a whole number from 1 to ${MOST}`)
  }
  if (samples.length === 0) return samples.slice()
  let current = samples
  let left = factor
  for (const step of stepsOf(factor)) {
    current = decimateOnce(current, step, lowPass(step, left))
    left /= step
  }
  return current === samples ? samples.slice() : current
}

/** 24 → 4, 3, 2; 35 → 7, 5. The largest first: most of the work is then done at the lowest rates. */
function stepsOf(factor: number): number[] {
  const steps: number[] = []
  let left = factor
  for (const step of [4, 3, 2]) for (; left % step === 0; left /= step) steps.push(step)
  for (let step = 5; left > 1; step += 2) for (; left % step === 0; left /= step) steps.push(step)
  return steps.sort((a, b) => b - a)
}

/**
 * Right half of a symmetric low-pass: `taps[0]` is the middle. Its cut lies at the new Nyquist frequency, so that every
 * `step`-th tap is nought and is never worked out.
 *
 * @param left What is still to be divided out, this step included: the later steps clear what aliases above the last
 *   pass band, so this one need only keep that band clean.
 */
function lowPass(step: number, left: number): Float64Array {
  const passEdge = (0.5 / left) * DECIMATE_PASS_SHARE
  const half = Math.ceil(kaiserHalfLength(STOP_DB, 1 / step - 2 * passEdge))
  const beta = kaiserBeta(STOP_DB)
  const taps = Float64Array.from({ length: half + 1 }, (_, k) =>
    k === 0
      ? 1 / step
      : k % step === 0
        ? 0
        : (Math.sin((Math.PI * k) / step) / (Math.PI * k)) * kaiserWindow(k / (half + 1), beta),
  )
  let sum = taps[0]!
  for (let k = 1; k <= half; k++) sum += 2 * taps[k]!
  return taps.map((tap) => tap / sum)
}

/**
 * One step, by polyphase: the samples are dealt out to `step` streams, and the taps k ≡ r (mod step) to the right meet
 * stream r while their mirror images to the left meet stream step − r. Block by block, so that the streams stay in the
 * processor's cache and no memory but the result is touched for the first time, which costs more than the arithmetic.
 */
function decimateOnce(samples: Float32Array, step: number, taps: Float64Array): Float32Array {
  const out = new Float32Array(Math.ceil(samples.length / step))
  const margin = Math.ceil(taps.length / step) + 1
  const branches = Array.from({ length: step - 1 }, (_, r) => ({
    taps: taps.filter((_, k) => k % step === r + 1),
    stream: new Float64Array(BLOCK + 2 * margin + TILE),
  }))
  const sum = new Float64Array(BLOCK + TILE)
  const middle = taps[0]!
  for (let first = 0; first < out.length; first += BLOCK) {
    const count = Math.min(BLOCK, out.length - first)
    for (let m = 0, i = first * step; m < count; m++, i += step) sum[m] = middle * samples[i]!
    for (const [r, { stream }] of branches.entries()) deal(samples, step, r + 1, first - margin, stream)
    for (const [r, branch] of branches.entries()) {
      addTaps(sum, count, branch.taps, branch.stream, branches[step - 2 - r]!.stream, margin)
    }
    for (let m = 0; m < count; m++) out[first + m] = sum[m]!
  }
  return out
}

/** Fills `target` with samples r + step·m for m from `first` on; before the first and after the last sample these two are held. */
function deal(samples: Float32Array, step: number, r: number, first: number, target: Float64Array): void {
  const last = samples.length - 1
  const from = Math.min(target.length, Math.max(0, Math.ceil(-r / step) - first))
  const to = Math.max(from, Math.min(target.length, Math.floor((last - r) / step) - first + 1))
  target.fill(samples[0]!, 0, from)
  for (let m = from, i = r + step * (first + from); m < to; m++, i += step) target[m] = samples[i]!
  target.fill(samples[last]!, to)
}

/** sum[m] += Σ_j taps[j]·(right[m + j] + left[m − 1 − j]), four m at a time with a sliding window of each stream. */
function addTaps(
  sum: Float64Array,
  count: number,
  taps: Float64Array,
  right: Float64Array,
  left: Float64Array,
  margin: number,
): void {
  for (let m = 0; m < count; m += TILE) {
    const to = m + margin
    let r0 = right[to]!
    let r1 = right[to + 1]!
    let r2 = right[to + 2]!
    let l1 = left[to]!
    let l2 = left[to + 1]!
    let l3 = left[to + 2]!
    let y0 = 0
    let y1 = 0
    let y2 = 0
    let y3 = 0
    for (let j = 0; j < taps.length; j++) {
      const tap = taps[j]!
      const r3 = right[to + 3 + j]!
      const l0 = left[to - 1 - j]!
      y0 += tap * (r0 + l0)
      y1 += tap * (r1 + l1)
      y2 += tap * (r2 + l2)
      y3 += tap * (r3 + l3)
      r0 = r1
      r1 = r2
      r2 = r3
      l3 = l2
      l2 = l1
      l1 = l0
    }
    sum[m]! += y0
    sum[m + 1]! += y1
    sum[m + 2]! += y2
    sum[m + 3]! += y3
  }
}
