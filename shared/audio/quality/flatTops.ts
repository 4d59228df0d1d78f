import type { ClipScan } from './clipScan'

/** How much of a clip lies flat at its own extremes. */
export interface FlatTops {
  readonly samples: number
  /** Of all samples, 0 to 1. */
  readonly sampleShare: number
  /** Of the 10 ms blocks, 0 to 1. */
  readonly blockShare: number
}

/** A sample counts as at the extreme within this share of it: an overloaded stage flattens tops to far less. */
const FLAT_SHARE = 2 ** -11 // chosen: 16 steps of a 16-bit converter at full scale

/** Samples in a row. Noise, however coarse, hardly ever meets its own extreme three times in a row. */
const LEAST_RUN = 3 // chosen

/**
 * A flat that was cut is entered or left in a leap; the round top of a slow wave, however long it stays within the
 * tolerance, is left by less than two tolerances a sample.
 */
const LEAP_TOLERANCES = 4 // chosen

/** A flat that lies nearer to the mean than this share of the sound's own size is idling, not cut. */
const OUTER_SHARE = 0.7 // chosen: a square wave, the flattest of all, lies at 1

/**
 * Flat tops: where the sound was cut off, at full scale or below it (an amplifier ahead of the converter overloads at any
 * level of the file).
 *
 * @param step Step of the converter, full scale.
 */
export function flatTops(samples: Float32Array, scan: ClipScan, step: number): FlatTops {
  let flat = 0
  const touched = new Uint8Array(scan.power.length)
  const mean = scan.mean.reduce((sum, one) => sum + one, 0) / Math.max(1, scan.mean.length)
  const size = Math.sqrt(scan.power.reduce((sum, one) => sum + one, 0) / Math.max(1, scan.power.length))
  for (const side of [1, -1]) {
    const peaks = side > 0 ? scan.highest : scan.lowest
    let extreme = Number.NEGATIVE_INFINITY
    for (const peak of peaks) extreme = Math.max(extreme, side * peak)
    if (extreme - side * mean < OUTER_SHARE * size) continue
    const tolerance = Math.max((extreme - side * mean) * FLAT_SHARE, step / 2)
    const limit = extreme - tolerance
    let done = 0
    for (let block = 0; block < peaks.length; block++) {
      if (side * peaks[block]! < limit) continue
      const from = Math.max(done, block * scan.blockSamples)
      const to = (block + 1) * scan.blockSamples
      const found = flatSamples(samples, side, from, to, limit, LEAP_TOLERANCES * tolerance)
      done = found.until
      flat += found.flat
      if (found.flat > 0) touched[block] = 1
    }
  }
  let blocks = 0
  for (const one of touched) blocks += one
  return {
    samples: flat,
    sampleShare: samples.length === 0 ? 0 : flat / samples.length,
    blockShare: touched.length === 0 ? 0 : blocks / touched.length,
  }
}

/** Flat samples of the runs that begin from `from` to `to`, and where the last of these runs ended. */
function flatSamples(
  samples: Float32Array,
  side: number,
  from: number,
  to: number,
  limit: number,
  leap: number,
): { flat: number; until: number } {
  let flat = 0
  let at = from
  while (at < to) {
    if (side * samples[at]! < limit) {
      at++
      continue
    }
    const start = at
    while (at < samples.length && side * samples[at]! >= limit) at++
    if (at - start < LEAST_RUN) continue
    const enters = start === 0 ? 0 : side * (samples[start]! - samples[start - 1]!)
    const leaves = at === samples.length ? 0 : side * (samples[at - 1]! - samples[at]!)
    if (Math.max(enters, leaves) > leap) flat += at - start
  }
  return { flat, until: at }
}
