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

/** How far the level falls over two steps at the edge … */
const FALL_DB = 20 // chosen

/** … how level it is over the four steps before it … */
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
  const levels = spectrumDb(samples, sampleRateHz)
  if (levels === null) return null
  for (let k = 4; k + 2 < levels.length; k++) {
    const here = levels[k]!
    const beyond = levels.slice(k + 2)
    const level = levels.slice(k - 4, k).every((before) => Math.abs(before - here) < SHOULDER_DB)
    const falls = here - levels[k + 2]! > FALL_DB
    const stays = Math.max(...beyond) < levels[k + 2]! + BACK_DB
    if (falls && stays && level) return FROM_HZ + (k + 1) * STEP_HZ
  }
  return null
}

/** Mean power at FROM_HZ, FROM_HZ + STEP_HZ … in dB; `null` for a clip without a frame or with a silent frequency. */
function spectrumDb(samples: Float32Array, sampleRateHz: number): number[] | null {
  const factor = Math.max(1, Math.round(sampleRateHz / RATE_HZ))
  const rateHz = sampleRateHz / factor
  const length = Math.round(FRAME_S * rateHz)
  const reach = samples.length - length * factor
  if (reach < 0) return null
  const frames = Math.max(1, Math.min(MOST_FRAMES, Math.floor((FRAMES_PER_S * samples.length) / sampleRateHz)))
  const topHz = Math.min(TO_HZ + 4 * STEP_HZ, 0.45 * rateHz)
  const powers = new Float64Array(Math.floor((topHz - FROM_HZ) / STEP_HZ) + 1)
  const window = Float64Array.from({ length }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / length) ** 2)
  const frame = new Float64Array(length)
  for (let f = 0; f < frames; f++) {
    const from = frames === 1 ? 0 : Math.floor((reach * f) / (frames - 1))
    for (let i = 0; i < length; i++) {
      let sum = 0
      for (let k = 0; k < factor; k++) sum += samples[from + i * factor + k]!
      frame[i] = sum * window[i]!
    }
    for (let k = 0; k < powers.length; k++) powers[k]! += goertzel(frame, (FROM_HZ + k * STEP_HZ) / rateHz)
  }
  const levels = Array.from(powers, powerToDb)
  return levels.every((level) => level !== null) ? levels : null
}
