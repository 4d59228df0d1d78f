import { mean as meanOf, median } from '../../base/statistics'
import { powerToDb } from '../../base/units'
import { goertzel } from '../goertzel'

/** Rate that the frames are brought to; treble that aliases can only fill an empty band, never empty a full one. */
const RATE_HZ = 12_000

const FRAME_S = 0.02
const FRAMES_PER_S = 4
const MOST_FRAMES = 60

/** Where an edge is looked for, and in which steps. */
const FROM_HZ = 600
const TO_HZ = 4_000
const STEP_HZ = 150

/** What has to be empty above an edge at the top of that range. */
const BEYOND_HZ = 600

/** How far the level falls over two steps at the edge … */
const FALL_DB = 20 // chosen
const FALL_STEPS = 2

/** … how level it is over the four steps before it … */
const SHOULDER_STEPS = 4
const SHOULDER_DB = 8 // chosen: soil's slope is there before the edge too, and a tone stands out from both sides

/** … and how little comes back beyond it. */
const BACK_DB = 6 // chosen

/**
 * The frequency above which a codec, a telephone line or a low sample rate left nothing.
 *
 * Soil, too, takes the treble away, but the slope grows with frequency and ends in the noise of the recorder; a filter
 * cuts a level shoulder off.
 *
 * @returns Hz, within a step of 150; `null` when there is no such edge from 0.6 to 4 kHz.
 */
export function sharpEdge(samples: Float32Array, sampleRateHz: number): number | null {
  const spectra = spectraDb(samples, sampleRateHz)
  if (spectra === null) return null
  const { mean, usual } = spectra
  for (let k = SHOULDER_STEPS; k + FALL_STEPS < mean.length; k++) {
    if (isEdge(mean, k) && isEdge(usual, k)) return FROM_HZ + (k + FALL_STEPS / 2) * STEP_HZ
  }
  return null
}

/** A level shoulder up to `k`, a fall right after it, and nothing beyond. */
function isEdge(levels: readonly number[], k: number): boolean {
  const here = levels[k]!
  const below = levels[k + FALL_STEPS]!
  const level = levels.slice(k - SHOULDER_STEPS, k).every((before) => Math.abs(before - here) < SHOULDER_DB)
  return level && here - below > FALL_DB && Math.max(...levels.slice(k + FALL_STEPS)) < below + BACK_DB
}

/**
 * Powers at FROM_HZ, FROM_HZ + STEP_HZ … in dB: mean and median over frames spread through the clip. An edge of the path
 * is in both; the upper end of the bubbles' pitches is in the mean alone.
 *
 * @returns `null` for a clip shorter than a frame, or where a frequency is silent.
 */
function spectraDb(samples: Float32Array, sampleRateHz: number): { mean: number[]; usual: number[] } | null {
  const factor = Math.max(1, Math.round(sampleRateHz / RATE_HZ))
  const rateHz = sampleRateHz / factor
  const length = Math.round(FRAME_S * rateHz)
  const reach = samples.length - length * factor
  if (reach < 0) return null
  const frames = Math.max(1, Math.min(MOST_FRAMES, Math.floor((FRAMES_PER_S * samples.length) / sampleRateHz)))
  const topHz = Math.min(TO_HZ + BEYOND_HZ, 0.45 * rateHz)
  const powers = Array.from({ length: Math.floor((topHz - FROM_HZ) / STEP_HZ) + 1 }, () => new Float64Array(frames))
  const window = Float64Array.from({ length }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / length) ** 2)
  const frame = new Float64Array(length)
  for (let f = 0; f < frames; f++) {
    fillFrame(frame, samples, Math.floor((reach * f) / Math.max(1, frames - 1)), factor, window)
    for (const [k, ofFrames] of powers.entries()) ofFrames[f] = goertzel(frame, (FROM_HZ + k * STEP_HZ) / rateHz)
  }
  const known = (levels: (number | null)[]) => levels.filter((level) => level !== null)
  const mean = known(powers.map((ofFrames) => powerToDb(meanOf(ofFrames))))
  const usual = known(powers.map((ofFrames) => powerToDb(median(ofFrames))))
  return mean.length === powers.length && usual.length === powers.length ? { mean, usual } : null
}

/** Sums of `factor` samples from `from` on, windowed. */
function fillFrame(
  frame: Float64Array,
  samples: Float32Array,
  from: number,
  factor: number,
  window: Float64Array,
): void {
  for (let i = 0, at = from; i < frame.length; i++) {
    let sum = 0
    for (const end = at + factor; at < end; at++) sum += samples[at]!
    frame[i] = sum * window[i]!
  }
}
