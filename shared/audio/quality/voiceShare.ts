import { median, robustSpread } from '../../base/statistics'
import { butterworth, filterInPlace } from '../biquad'
import type { ClipScan } from './clipScan'

/** Pitch of voices. */
const LOWEST_HZ = 80
const HIGHEST_HZ = 350

/** Rumble is alike at every lag, so it goes first. */
const RUMBLE_HZ = 100

const FRAME_S = 0.03
const HOP_S = 0.02

/** Only every fourth frame is looked at unless these show something. */
const FIRST_LOOK = 4
const FIRST_LOOK_SHARE = 0.06 // chosen: bubbles show up to 4 % by chance, speech 10 % and more

/** Likeness of a frame to itself a period later. */
const VOICED_LIKENESS = 0.8 // chosen

/** A tone is as like itself after each of its periods; a voice only after the whole one, by this share. */
const SHORTER_SHARE = 0.85 // chosen

/** Root mean square frequency over pitch: 1 for a tone, more with overtones. */
const OVERTONE_RATIO = 1.5 // chosen

/** Frames in a row for a syllable, and the most that pitch may change from one to the next. */
const LEAST_FRAMES = 5 // chosen: 100 ms
const GLIDE_SHARE = 0.12 // chosen

/** Robust spread of all pitches over their median: a motor's pitch stands still. */
const LEAST_SPREAD = 0.03 // chosen

/**
 * Share of the clip in which somebody seems to speak: stretches of a tenth of a second and more with a gliding pitch and
 * overtones.
 *
 * @returns 0 to 1; 0 when all these stretches together have one steady pitch.
 */
export function voiceShare(scan: ClipScan): number {
  const sound = new Float64Array(scan.slow)
  filterInPlace(sound, butterworth('highpass', RUMBLE_HZ, scan.slowRateHz))
  const frames = framesOf(sound, scan.slowRateHz)
  if (frames.count < LEAST_FRAMES) return 0
  let seen = 0
  let looked = 0
  for (let frame = 0; frame < frames.count; frame += FIRST_LOOK) {
    if (pitchHz(frames, frame) !== null) seen++
    looked++
  }
  if (seen < FIRST_LOOK_SHARE * looked) return 0
  const voiced = syllables(frames)
  if (voiced.length === 0 || robustSpread(voiced) < LEAST_SPREAD * median(voiced)) return 0
  return voiced.length / frames.count
}

interface Frames {
  readonly sound: Float64Array
  /** Sum of the squares before each sample. */
  readonly energy: Float64Array
  readonly rateHz: number
  readonly length: number
  readonly hop: number
  readonly shortest: number
  readonly longest: number
  readonly count: number
}

function framesOf(sound: Float64Array, rateHz: number): Frames {
  const energy = new Float64Array(sound.length + 1)
  for (let i = 0; i < sound.length; i++) energy[i + 1] = energy[i]! + sound[i]! * sound[i]!
  const length = Math.round(FRAME_S * rateHz)
  const hop = Math.round(HOP_S * rateHz)
  const longest = Math.floor(rateHz / LOWEST_HZ)
  const count = Math.max(0, Math.floor((sound.length - length - longest) / hop) + 1)
  return { sound, energy, rateHz, length, hop, shortest: Math.ceil(rateHz / HIGHEST_HZ), longest, count }
}

/** Pitches of the frames that hang together as syllables. */
function syllables(frames: Frames): number[] {
  const voiced: number[] = []
  let run: number[] = []
  for (let frame = 0; frame <= frames.count; frame++) {
    const pitch = frame < frames.count ? pitchHz(frames, frame) : null
    const last = run[run.length - 1]
    const goesOn = pitch !== null && last !== undefined && Math.abs(pitch / last - 1) < GLIDE_SHARE
    if (goesOn) {
      run.push(pitch)
      continue
    }
    if (run.length >= LEAST_FRAMES) voiced.push(...run)
    run = pitch === null ? [] : [pitch]
  }
  return voiced
}

/** Pitch of one frame; `null` when it has none, or is a tone without overtones. */
function pitchHz(frames: Frames, frame: number): number | null {
  const from = frame * frames.hop
  let best = 0
  let most = VOICED_LIKENESS
  let shorter = 0
  let mostBefore = 0
  for (let lag = 2; lag <= frames.longest; lag++) {
    const like = likeness(frames, from, lag)
    if (like > most && lag >= frames.shortest) {
      most = like
      best = lag
      shorter = mostBefore
    }
    if (lag < 0.75 * frames.longest) mostBefore = Math.max(mostBefore, like)
  }
  return best === 0 || shorter > SHORTER_SHARE * most || !hasOvertones(frames, from, best) ? null : frames.rateHz / best
}

/** Correlation of a frame with itself `lag` samples later, −1 to 1. */
function likeness(frames: Frames, from: number, lag: number): number {
  const { sound, energy, length } = frames
  let product = 0
  for (let i = from; i < from + length; i++) product += sound[i]! * sound[i + lag]!
  const here = energy[from + length]! - energy[from]!
  const later = energy[from + lag + length]! - energy[from + lag]!
  return here > 0 && later > 0 ? product / Math.sqrt(here * later) : 0
}

/** The mean square of the slope tells the mean square of the frequency. */
function hasOvertones(frames: Frames, from: number, lag: number): boolean {
  const { sound, energy, length } = frames
  let slopes = 0
  for (let i = from + 1; i < from + length; i++) slopes += (sound[i]! - sound[i - 1]!) ** 2
  const ofTone = 4 * Math.sin((Math.PI * OVERTONE_RATIO) / lag) ** 2
  return slopes > ofTone * (energy[from + length]! - energy[from]!)
}
