import { InputError } from '../base/errors'

/** Highest peak that may reach an ear: −12 dBFS as a factor. */
export const EAR_CEILING = 10 ** (-12 / 20)

export interface LimiterOptions {
  readonly sampleRateHz: number
  /** Highest magnitude let out, above 0; `EAR_CEILING` unless said. */
  readonly ceiling?: number
  /** How far the gain looks ahead, and by how much the sound is late, s. */
  readonly lookAheadS?: number
  /** Time in which the gain recovers to within 1/e, s. */
  readonly releaseS?: number
}

/** A limiter with its memory: one stream of one channel each. */
export interface Limiter {
  /** Limits the next samples of the stream; `from` and `to` have one length and may be the same array. */
  readonly process: (from: Float32Array, to: Float32Array) => void
  /** The sound comes out this many samples late. */
  readonly delaySamples: number
}

/**
 * A look-ahead peak limiter: the gain falls smoothly before a peak, so that none passes the ceiling and none clicks.
 *
 *     need[n] = min(1, ceiling/|x[n]|)
 *     held[n] = min(need[n−L+1 … n]),   eased[n] = min(held[n], eased[n−1] + r·(1 − eased[n−1]))
 *     y[n]    = x[n−L+1] · mean(eased[n−L+1 … n])
 *
 * Why it holds: each eased value in the mean is at most the held one of its moment, and each of those minima takes in
 * sample n−L+1; so their mean is at most what that sample needs. Rounding is taken off by a last clamp. What is not a
 * finite number is let out as silence.
 *
 * @throws {InputError} a rate, ceiling or time that is not above 0.
 * @example makeLimiter({ sampleRateHz: 48000 }).process(block, block)
 */
export function makeLimiter(options: LimiterOptions): Limiter {
  const { sampleRateHz, ceiling = EAR_CEILING, lookAheadS = 0.005, releaseS = 0.08 } = options
  for (const [name, value] of Object.entries({ sampleRateHz, ceiling, lookAheadS, releaseS })) {
    if (!(value > 0 && value < Number.POSITIVE_INFINITY)) throw new InputError(`${name} is ${value}; must be above 0`)
  }
  const length = Math.max(1, Math.round(lookAheadS * sampleRateHz))
  const recovery = 1 - Math.exp(-1 / (releaseS * sampleRateHz))
  const late = new Float64Array(length)
  const easedRing = new Float64Array(length).fill(1)
  const lowest = slidingMinimum(length)
  const top = largestFloat32Within(ceiling)
  let sum = length
  let eased = 1
  let at = 0

  const step = (given: number) => {
    const x = Number.isFinite(given) ? given : 0
    const size = Math.abs(x)
    const held = lowest(size > ceiling ? ceiling / size : 1)
    eased = Math.min(held, eased + recovery * (1 - eased))
    sum += eased - easedRing[at]!
    easedRing[at] = eased
    late[at] = x
    at = at + 1 === length ? 0 : at + 1
    return Math.max(-top, Math.min(top, late[at]! * (sum / length)))
  }

  return {
    delaySamples: length - 1,
    process: (from, to) => {
      for (let n = 0; n < from.length; n++) to[n] = step(from[n]!)
    },
  }
}

/** Storing as Float32 may round up; this does not. */
function largestFloat32Within(ceiling: number): number {
  const rounded = Math.fround(ceiling)
  return rounded <= ceiling ? rounded : Math.fround(ceiling * (1 - 2 ** -23))
}

/** Minimum of the last `length` values given, each once in and once out of a queue of rising values. */
function slidingMinimum(length: number): (value: number) => number {
  const values = new Float64Array(length)
  const times = new Float64Array(length)
  let head = 0
  let count = 0
  let now = 0
  return (value) => {
    while (count > 0 && values[(head + count - 1) % length]! >= value) count--
    if (count > 0 && times[head]! <= now - length) {
      head = (head + 1) % length
      count--
    }
    const tail = (head + count) % length
    values[tail] = value
    times[tail] = now++
    count++
    return values[head]!
  }
}
