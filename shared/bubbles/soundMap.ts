import { decimate } from '../audio/decimate'
import { transformOfSize } from '../spectrum/powerSpectrum'
import { windowSamples } from '../spectrum/windows'

/** Rings are looked for between these pitches, Hz: what soil lets through and a bubble of 1 to 20 mm can ring at. */
export const LOWEST_RING_HZ = 150
export const HIGHEST_RING_HZ = 3000

/** The map reaches a little further on both sides, so that every ring has neighbours to stand out from. */
const MAP_FROM_HZ = 90
const MAP_TO_HZ = 3300

/** Frames are as long as the energy of a ring in the middle of the range lasts: best match, most signal over noise. */
const FRAME_S = 0.02
const HOP_S = 0.004
const TRANSFORM_SIZE = 256

/** Levels this far below the clip's mean power count as silence, so that digital silence has a level too, dB. */
const SILENCE_DB = -60

/** The floor of a pitch is its mean level in dB over this long on both sides, s: bursts hardly lift it. Chosen. */
const FLOOR_HALF_S = 0.4

/**
 * What the mean of levels in dB reads below the mean power in dB for noise: 10·γ/ln 10, γ Euler's constant. The power
 * in a bin of noise is exponentially distributed, and the mean logarithm of that is −γ.
 */
export const DB_MEAN_BIAS = (10 * 0.5772156649015329) / Math.LN10

/** Levels of a clip over time and pitch; row `frame`, column `bin`. */
export interface SoundMap {
  readonly frameCount: number
  readonly binCount: number
  /** Pitch of column k is (firstBin + k)·binWidthHz. */
  readonly firstBin: number
  readonly binWidthHz: number
  readonly hopS: number
  /** Middle of frame i is at i·hopS + halfFrameS. */
  readonly halfFrameS: number
  /** Linear power, any unit. */
  readonly power: Float32Array
  /** The same in dB, against the same unit. */
  readonly levelDb: Float32Array
  /** Sliding mean level of the same bin, corrected so that steady noise reads its mean power, dB. */
  readonly floorDb: Float32Array
  /** Sums of `levelDb` over all rows above and columns left of a place: (frameCount + 1) × (binCount + 1). */
  readonly levelSums: Float64Array
  /** The clip itself at the map's rate. */
  readonly samples: Float32Array
  readonly sampleRateHz: number
}

/**
 * Draws the map on which rings are looked for.
 *
 * Everything is done at 8 to 16 kHz, whatever the clip's rate, and every length is set in seconds, so that the rate
 * hardly matters. The level does not matter at all: silence is told relative to the clip's own mean.
 *
 * @param samples Mono, finite, at 8 000 Hz or more.
 */
export function soundMap(samples: Float32Array, sampleRateHz: number): SoundMap {
  const factor = Math.max(1, Math.floor(sampleRateHz / 8000))
  const slow = factor === 1 ? samples : decimate(samples, factor)
  const rateHz = sampleRateHz / factor
  const frameLength = Math.min(TRANSFORM_SIZE, Math.round(FRAME_S * rateHz))
  const hop = Math.round(HOP_S * rateHz)
  const binWidthHz = rateHz / TRANSFORM_SIZE
  const firstBin = Math.round(MAP_FROM_HZ / binWidthHz)
  const binCount = Math.min(Math.round(MAP_TO_HZ / binWidthHz), TRANSFORM_SIZE / 2 - 1) - firstBin + 1
  const frameCount = Math.max(0, Math.floor((slow.length - frameLength) / hop) + 1)
  const power = framePowers(slow, { frameLength, hop, frameCount, firstBin, binCount })
  const levelDb = levels(power)
  return {
    frameCount,
    binCount,
    firstBin,
    binWidthHz,
    hopS: hop / rateHz,
    halfFrameS: frameLength / 2 / rateHz,
    power,
    levelDb,
    floorDb: slidingFloor(levelDb, frameCount, binCount, Math.round((FLOOR_HALF_S * rateHz) / hop)),
    levelSums: sums(levelDb, frameCount, binCount),
    samples: slow,
    sampleRateHz: rateHz,
  }
}

interface Layout {
  readonly frameLength: number
  readonly hop: number
  readonly frameCount: number
  readonly firstBin: number
  readonly binCount: number
}

function framePowers(samples: Float32Array, layout: Layout): Float32Array {
  const { frameLength, hop, frameCount, firstBin, binCount } = layout
  const window = windowSamples('hann', frameLength)
  const transform = transformOfSize(TRANSFORM_SIZE)
  const input = new Float64Array(TRANSFORM_SIZE)
  const output = new Float64Array(2 * TRANSFORM_SIZE)
  const power = new Float32Array(frameCount * binCount)
  const gain = 1 / largest(samples)
  for (let i = 0, at = 0; i < frameCount; i++) {
    for (let n = 0, s = i * hop; n < frameLength; n++, s++) input[n] = samples[s]! * gain * window[n]!
    transform.real(output, input)
    for (let k = 0, o = 2 * firstBin; k < binCount; k++, o += 2) {
      power[at++] = output[o]! * output[o]! + output[o + 1]! * output[o + 1]!
    }
  }
  return power
}

/** Largest magnitude; 1 for silence. Scaling by it keeps the faintest clip clear of the limits of single precision. */
function largest(samples: Float32Array): number {
  let most = 0
  for (let n = 0; n < samples.length; n++) most = Math.max(most, Math.abs(samples[n]!))
  return most > 0 ? most : 1
}

function levels(power: Float32Array): Float32Array {
  let sum = 0
  for (let i = 0; i < power.length; i++) sum += power[i]!
  const silence = sum > 0 ? (sum / power.length) * 10 ** (SILENCE_DB / 10) : 1
  const levelDb = new Float32Array(power.length)
  const scale = 10 / Math.LN10
  for (let i = 0; i < power.length; i++) levelDb[i] = scale * Math.log(power[i]! + silence)
  return levelDb
}

function slidingFloor(levelDb: Float32Array, frameCount: number, binCount: number, half: number): Float32Array {
  const floorDb = new Float32Array(levelDb.length)
  const sum = new Float64Array(binCount)
  let from = 0
  let to = 0
  for (let i = 0; i < frameCount; i++) {
    for (; to < Math.min(frameCount, i + half + 1); to++)
      for (let k = 0, at = to * binCount; k < binCount; k++, at++) sum[k]! += levelDb[at]!
    for (; from < i - half; from++)
      for (let k = 0, at = from * binCount; k < binCount; k++, at++) sum[k]! -= levelDb[at]!
    const share = 1 / (to - from)
    for (let k = 0, at = i * binCount; k < binCount; k++, at++) floorDb[at] = sum[k]! * share + DB_MEAN_BIAS
  }
  return floorDb
}

function sums(levelDb: Float32Array, frameCount: number, binCount: number): Float64Array {
  const width = binCount + 1
  const total = new Float64Array((frameCount + 1) * width)
  for (let i = 0; i < frameCount; i++) {
    let row = 0
    for (let k = 0, at = (i + 1) * width + 1; k < binCount; k++, at++) {
      row += levelDb[i * binCount + k]!
      total[at] = total[at - width]! + row
    }
  }
  return total
}
