import { decimate } from '../audio/decimate'
import { transformOfSize } from '../spectrum/powerSpectrum'
import { windowSamples } from '../spectrum/windows'

/** The map reaches a little beyond the pitches of rings, so that every ring has neighbours to stand out from, Hz. */
const MAP_FROM_HZ = 90
const MAP_TO_HZ = 3300

/** Frames are as long as the energy of a ring in the middle of the range lasts: best match, most signal over noise. */
const FRAME_S = 0.02
const HOP_S = 0.005
const TRANSFORM_SIZE = 256

/** Power this far below the clip's mean is added everywhere, so that digital silence has a level too, dB. */
const SILENCE_DB = -60

/** The floor is taken from stretches of so many frames, that many stretches to either side: about 0.4 s. Chosen. */
const STRETCH_FRAMES = 10
const FLOOR_STRETCHES = 8

/**
 * What the mean of levels in dB reads below the mean power in dB for noise: 10·γ/ln 10, γ Euler's constant. The power
 * in a bin of noise is exponentially distributed, and the mean logarithm of that is −γ.
 */
export const DB_MEAN_BIAS = (10 * 0.5772156649015329) / Math.LN10

const DB_PER_NEPER_OF_POWER = 10 / Math.LN10

/** Powers of a clip over time and pitch; row `frame`, column `bin`. */
export interface SoundMap {
  readonly frameCount: number
  readonly binCount: number
  /** Pitch of column k is (firstBin + k)·binWidthHz. */
  readonly firstBin: number
  readonly binWidthHz: number
  readonly hopS: number
  /** Middle of frame i is at i·hopS + halfFrameS. */
  readonly halfFrameS: number
  /** Linear, any unit, > 0. */
  readonly power: Float32Array
  /**
   * Floor of each pitch, in the unit of `power`: the mean level in dB over some 0.4 s either side, which bursts hardly
   * lift, corrected so that steady noise reads its mean power. Rows as `floorRow` says.
   */
  readonly floor: Float32Array
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
  return {
    frameCount,
    binCount,
    firstBin,
    binWidthHz,
    hopS: hop / rateHz,
    halfFrameS: frameLength / 2 / rateHz,
    power,
    floor: floors(power, frameCount, binCount),
    samples: slow,
    sampleRateHz: rateHz,
  }
}

/** Level of a cell, dB. */
export function powerDb(power: number): number {
  return DB_PER_NEPER_OF_POWER * Math.log(power)
}

/** Where the floors of a frame begin in `floor`, one row for each `STRETCH_FRAMES` frames. */
export function floorRow(map: SoundMap, frame: number): number {
  return Math.floor(frame / STRETCH_FRAMES) * map.binCount
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
  scaleToOne(window, samples)
  let sum = 0
  for (let i = 0, at = 0; i < frameCount; i++) {
    for (let n = 0, s = i * hop; n < frameLength; n++, s++) input[n] = samples[s]! * window[n]!
    transform.real(output, input)
    for (let k = 0, o = 2 * firstBin; k < binCount; k++, o += 2) {
      const cell = output[o]! * output[o]! + output[o + 1]! * output[o + 1]!
      power[at++] = cell
      sum += cell
    }
  }
  const silence = sum > 0 ? (sum / power.length) * 10 ** (SILENCE_DB / 10) : 1
  for (let i = 0; i < power.length; i++) power[i]! += silence
  return power
}

/** Brings the loudest sample to 1, so that the faintest clip stays clear of the limits of single precision. */
function scaleToOne(window: Float64Array, samples: Float32Array): void {
  let most = 0
  for (let n = 0; n < samples.length; n++) {
    const size = Math.abs(samples[n]!)
    if (size > most) most = size
  }
  if (most > 0) for (let n = 0; n < window.length; n++) window[n]! /= most
}

function floors(power: Float32Array, frameCount: number, binCount: number): Float32Array {
  const stretches = Math.ceil(frameCount / STRETCH_FRAMES)
  const level = stretchLevels(power, frameCount, binCount)
  const floor = new Float32Array(stretches * binCount)
  for (let s = 0; s < stretches; s++) {
    const from = Math.max(0, s - FLOOR_STRETCHES)
    const to = Math.min(stretches, s + FLOOR_STRETCHES + 1)
    for (let k = 0; k < binCount; k++) {
      let sum = 0
      for (let i = from; i < to; i++) sum += level[i * binCount + k]!
      floor[s * binCount + k] = Math.exp((sum / (to - from) + DB_MEAN_BIAS) / DB_PER_NEPER_OF_POWER)
    }
  }
  return floor
}

/** Mean level of each bin over each stretch, dB: the logarithm of the product is one logarithm for ten powers. */
function stretchLevels(power: Float32Array, frameCount: number, binCount: number): Float64Array {
  const stretches = Math.ceil(frameCount / STRETCH_FRAMES)
  const level = new Float64Array(stretches * binCount)
  for (let s = 0; s < stretches; s++) {
    const row = s * binCount
    const until = Math.min(frameCount, (s + 1) * STRETCH_FRAMES)
    level.fill(1, row, row + binCount)
    for (let i = s * STRETCH_FRAMES; i < until; i++) {
      for (let k = 0, at = i * binCount; k < binCount; k++, at++) level[row + k]! *= power[at]!
    }
    const frames = until - s * STRETCH_FRAMES
    for (let k = row; k < row + binCount; k++) level[k] = powerDb(level[k]!) / frames
  }
  return level
}
