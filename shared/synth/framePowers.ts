import type { Random } from '../base/random'
import type { Rings } from './bubbleTrain'
import { type Chirp, ENVELOPE_STEP_S, type HeardRings, type Parts, type Swelling, type VoiceSound } from './clipSounds'
import { bandPower, EVIDENCE_BANDS, nearestCell } from './grid'
import { bubbleEnergyAt, pitchStep, ringEnergy } from './ringEnergy'

/** Short frames of drawn evidence, s. */
export const FRAME_S = 0.05

const BAND_COUNT = EVIDENCE_BANDS.length
const STEPS_PER_FRAME = Math.round(FRAME_S / ENVELOPE_STEP_S)

/** Power of a clip by band and frame, and what of it is noise. Row by row: index = band · frames + frame. */
export interface FramePowers {
  readonly frames: number
  /** Expected power of the noises. */
  readonly noise: Float64Array
  /** Power of rings, tones and whistles. */
  readonly tonal: Float64Array
}

/**
 * Sums the parts of a clip by band and short frame, without making the sound.
 *
 * @param frames Number of frames, ≥ 1.
 */
export function framePowers(parts: Parts, frames: number): FramePowers {
  const noise = new Float64Array(BAND_COUNT * frames)
  const tonal = new Float64Array(BAND_COUNT * frames)
  for (const [b, band] of EVIDENCE_BANDS.entries())
    noise.fill(bandPower(parts.steadyPsd, band), b * frames, (b + 1) * frames)
  for (const swelling of parts.swelling) addSwelling(noise, frames, swelling)
  for (const voice of parts.voices) addVoice(noise, frames, voice)
  for (const rings of parts.rings) addRings(tonal, frames, rings)
  for (const tone of parts.tones) {
    const b = bandOfCell(nearestCell(tone.frequencyHz))
    if (b !== null) for (let f = 0; f < frames; f++) tonal[b * frames + f]! += tone.power
  }
  for (const chirp of parts.chirps) addChirp(tonal, frames, chirp)
  return { frames, noise, tonal }
}

function addSwelling(noise: Float64Array, frames: number, { psd, envelope }: Swelling): void {
  const square = new Float64Array(frames)
  for (let f = 0; f < frames; f++) {
    let sum = 0
    for (let i = f * STEPS_PER_FRAME; i < (f + 1) * STEPS_PER_FRAME; i++) sum += (envelope[i] ?? 0) ** 2
    square[f] = sum / STEPS_PER_FRAME
  }
  for (const [b, band] of EVIDENCE_BANDS.entries()) {
    const power = bandPower(psd, band)
    for (let f = 0; f < frames; f++) noise[b * frames + f]! += power * square[f]!
  }
}

/** Share of a frame that a stretch of time fills, for each frame it touches. */
function eachOverlap(fromS: number, toS: number, frames: number, visit: (frame: number, share: number) => void): void {
  const last = Math.min(frames - 1, Math.floor(toS / FRAME_S))
  for (let f = Math.max(0, Math.floor(fromS / FRAME_S)); f <= last; f++)
    visit(f, Math.max(0, Math.min(toS, (f + 1) * FRAME_S) - Math.max(fromS, f * FRAME_S)) / FRAME_S)
}

/** Mean square of the envelope of a syllable: sin² over its length, squared. */
const SYLLABLE_MEAN_SQUARE = 3 / 8

function addVoice(noise: Float64Array, frames: number, voice: VoiceSound): void {
  const powers = EVIDENCE_BANDS.map((band) => bandPower(voice.psd, band) * SYLLABLE_MEAN_SQUARE)
  eachOverlap(voice.timeS, voice.timeS + voice.durationS, frames, (f, share) => {
    for (const [b, power] of powers.entries()) noise[b * frames + f]! += power * share
  })
}

function addChirp(tonal: Float64Array, frames: number, chirp: Chirp): void {
  const steps = 6
  const durationS = chirp.durationS / steps
  for (let s = 0; s < steps; s++) {
    const along = (s + 0.5) / steps
    const b = bandOfCell(nearestCell(chirp.startHz + (chirp.endHz - chirp.startHz) * along))
    if (b === null) continue
    const power = (chirp.amplitude ** 2 / 2) * Math.sin(Math.PI * along) ** 2
    const fromS = chirp.timeS + s * durationS
    eachOverlap(fromS, fromS + durationS, frames, (f, share) => {
      tonal[b * frames + f]! += power * share
    })
  }
}

function bandOfCell(cell: number): number | null {
  const b = Math.floor((cell - EVIDENCE_BANDS[0]!.firstCell) / 3)
  return b >= 0 && b < BAND_COUNT ? b : null
}

/** Energies per band of rings that differ only in amplitude, through a gain; filled as pitches turn up. */
function bandEnergy(energy: Float64Array, gain: Float64Array): Float64Array {
  const bands = new Float64Array(BAND_COUNT)
  for (let b = 0; b < BAND_COUNT; b++) {
    const g = EVIDENCE_BANDS[b]!.firstCell
    bands[b] = energy[g]! * gain[g]! + energy[g + 1]! * gain[g + 1]! + energy[g + 2]! * gain[g + 2]!
  }
  return bands
}

function addRings(tonal: Float64Array, frames: number, { rings, gain, areBubbles }: HeardRings): void {
  const known = new Map<number, Float64Array>()
  for (let i = 0; i < rings.timeS.length; i++) {
    const bands = areBubbles ? bubbleBands(rings.pitchHz[i]!, gain, known) : ringBands(rings, i, gain)
    const square = areBubbles ? rings.amplitude[i]! ** 2 : 1
    spread(tonal, frames, { bands, square, timeS: rings.timeS[i]!, decayPerS: rings.decayPerS[i]! })
  }
}

function bubbleBands(pitchHz: number, gain: Float64Array, known: Map<number, Float64Array>): Float64Array {
  const step = pitchStep(pitchHz)
  let bands = known.get(step)
  if (bands === undefined) {
    bands = bandEnergy(bubbleEnergyAt(step), gain)
    known.set(step, bands)
  }
  return bands
}

function ringBands(rings: Rings, i: number, gain: Float64Array): Float64Array {
  const ring = { amplitude: rings.amplitude[i]!, pitchHz: rings.pitchHz[i]!, decayPerS: rings.decayPerS[i]! }
  return bandEnergy(ringEnergy(ring), gain)
}

interface OneRingEnergy {
  readonly bands: Float64Array
  readonly square: number
  readonly timeS: number
  readonly decayPerS: number
}

/** Lays a ring's energy into the frames it lasts through: energy up to a time is 1 − e^(−2·d·t). */
function spread(tonal: Float64Array, frames: number, ring: OneRingEnergy): void {
  let left = 1
  for (let f = Math.floor(ring.timeS / FRAME_S); f < frames && left > 0.005; f++) {
    const after = Math.exp(-2 * ring.decayPerS * ((f + 1) * FRAME_S - ring.timeS))
    const power = (ring.square * (left - after)) / FRAME_S
    for (let b = 0; b < BAND_COUNT; b++) tonal[b * frames + f]! += power * ring.bands[b]!
    left = after
  }
}

/**
 * Powers as a finite clip shows them: noise scatters as a chi-squared variable with 2·(bandwidth · frame) degrees of
 * freedom, and beats with what is tonal.
 *
 * @returns Power by band and frame, laid out like the input.
 */
export function scattered({ frames, noise, tonal }: FramePowers, random: Random): Float64Array {
  const powers = new Float64Array(noise.length)
  for (let b = 0; b < BAND_COUNT; b++) {
    const shape = EVIDENCE_BANDS[b]!.widthHz * FRAME_S
    for (let i = b * frames; i < (b + 1) * frames; i++) {
      const beat = Math.sqrt((2 * noise[i]! * tonal[i]!) / Math.max(1, shape)) * random.normal()
      const power = noise[i]! * gammaOverShape(shape, random) + tonal[i]! + beat
      powers[i] = Math.max(power, 0.02 * (noise[i]! + tonal[i]!))
    }
  }
  return powers
}

/** A gamma variable of mean 1: exact by waiting times for shapes near 1, cube-root normal above. */
function gammaOverShape(shape: number, random: Random): number {
  if (shape < 1.5) return random.exponential(1)
  const k = 1 / (9 * shape)
  return Math.max(0, 1 - k + random.normal() * Math.sqrt(k)) ** 3
}

/** Expected power of a whole clip by frame, over the bands of evidence: what a riding gain follows. */
export function frameTotals(powers: Float64Array, frames: number): Float64Array {
  const totals = new Float64Array(frames)
  for (let b = 0; b < BAND_COUNT; b++) for (let f = 0; f < frames; f++) totals[f]! += powers[b * frames + f]!
  return totals
}
