import type { Random } from '../base/random'
import type { Rings } from './bubbleTrain'
import { type Chirp, ENVELOPE_STEP_S, type HeardRings, type Parts, type Swelling, type VoiceSound } from './clipSounds'
import { FRAME_GROUPS, type FrameGrid, firstFrameAt, frameGrid, frameWeight, lastFrameAt } from './frameGrid'
import { bandPower, CELL_WIDTH_HZ, EVIDENCE_BANDS, GRID_COUNT, nearestCell } from './grid'
import { bubbleEnergyAt, pitchStep, ringEnergy } from './ringEnergy'

const BAND_COUNT = EVIDENCE_BANDS.length

/** Power of a clip by band and frame. Each band has the frames of its group. */
export interface FramePowers {
  readonly grids: readonly FrameGrid[]
  /** Expected power of the noises, one array a band. */
  readonly noise: readonly Float64Array[]
  /** Power of rings, tones and whistles, one array a band. */
  readonly tonal: readonly Float64Array[]
  /** Steady power outside the bands. */
  readonly outside: number
}

/** Sums the parts of a clip by band and short frame, without making the sound. */
export function framePowers(parts: Parts, durationS: number): FramePowers {
  const grids = FRAME_GROUPS.map((group) => frameGrid(group, durationS))
  const each = () =>
    grids.flatMap(({ from, to, count }) => Array.from({ length: to - from }, () => new Float64Array(count)))
  const noise = each()
  const tonal = each()
  for (const [b, band] of EVIDENCE_BANDS.entries()) noise[b]!.fill(bandPower(parts.steadyPsd, band))
  for (const swelling of parts.swelling) addSwelling(noise, grids, swelling)
  for (const voice of parts.voices) addVoice(noise, grids, voice)
  for (const rings of parts.rings) addRings(tonal, grids, rings)
  for (const tone of parts.tones) {
    const b = bandOfCell(nearestCell(tone.frequencyHz))
    if (b !== null) for (let f = 0; f < tonal[b]!.length; f++) tonal[b]![f]! += tone.power
  }
  for (const chirp of parts.chirps) addChirp(tonal, grids, chirp)
  return { grids, noise, tonal, outside: outsideBands(parts.steadyPsd) }
}

function outsideBands(psd: Float64Array): number {
  const first = EVIDENCE_BANDS[0]!.firstCell
  let sum = 0
  for (let g = 0; g < GRID_COUNT; g++) if (g < first || g >= first + 3 * BAND_COUNT) sum += psd[g]! * CELL_WIDTH_HZ[g]!
  return sum
}

/** Adds energies per band that arrive at one moment to the frames that hear it. */
function addEnergy(
  powers: readonly Float64Array[],
  grids: readonly FrameGrid[],
  moment: { readonly timeS: number; readonly bands: ArrayLike<number>; readonly factor: number },
): void {
  const { timeS, bands, factor } = moment
  for (let g = 0; g < grids.length; g++) {
    const grid = grids[g]!
    const last = lastFrameAt(grid, timeS)
    for (let frame = firstFrameAt(grid, timeS); frame <= last; frame++) {
      const weight = frameWeight(grid, frame, timeS) * factor
      for (let b = grid.from; b < grid.to; b++) powers[b]![frame]! += weight * bands[b]!
    }
  }
}

function addSwelling(noise: readonly Float64Array[], grids: readonly FrameGrid[], { psd, envelope }: Swelling): void {
  const powers = EVIDENCE_BANDS.map((band) => bandPower(psd, band))
  for (const grid of grids) {
    const square = meanSquares(envelope, grid)
    for (let b = grid.from; b < grid.to; b++)
      for (let f = 0; f < grid.count; f++) noise[b]![f]! += powers[b]! * square[f]!
  }
}

/** Mean square of an envelope in each frame. */
function meanSquares(envelope: Float32Array, grid: FrameGrid): Float64Array {
  const square = new Float64Array(grid.count)
  for (let i = 0; i < envelope.length; i++) {
    if (envelope[i] === 0) continue
    const timeS = i * ENVELOPE_STEP_S
    const energy = envelope[i]! * envelope[i]! * ENVELOPE_STEP_S
    const last = lastFrameAt(grid, timeS)
    for (let f = firstFrameAt(grid, timeS); f <= last; f++) square[f]! += energy * frameWeight(grid, f, timeS)
  }
  return square
}

/** Pieces a sound of some length is laid down in. */
const PIECES = 8

function addVoice(noise: readonly Float64Array[], grids: readonly FrameGrid[], voice: VoiceSound): void {
  const bands = EVIDENCE_BANDS.map((band) => bandPower(voice.psd, band))
  for (let piece = 0; piece < PIECES; piece++) {
    const along = (piece + 0.5) / PIECES
    const factor = (Math.sin(Math.PI * along) ** 4 * voice.durationS) / PIECES
    addEnergy(noise, grids, { timeS: voice.timeS + along * voice.durationS, bands, factor })
  }
}

function addChirp(tonal: readonly Float64Array[], grids: readonly FrameGrid[], chirp: Chirp): void {
  for (let piece = 0; piece < PIECES; piece++) {
    const along = (piece + 0.5) / PIECES
    const b = bandOfCell(nearestCell(chirp.startHz + (chirp.endHz - chirp.startHz) * along))
    if (b === null) continue
    const bands = new Float64Array(BAND_COUNT)
    bands[b] = 1
    const factor = ((chirp.amplitude ** 2 / 2) * Math.sin(Math.PI * along) ** 2 * chirp.durationS) / PIECES
    addEnergy(tonal, grids, { timeS: chirp.timeS + along * chirp.durationS, bands, factor })
  }
}

/** Band of the evidence that a cell of the grid belongs to; `null` outside all. */
export function bandOfCell(cell: number): number | null {
  const b = Math.floor((cell - EVIDENCE_BANDS[0]!.firstCell) / 3)
  return b >= 0 && b < BAND_COUNT ? b : null
}

function bandEnergies(energy: Float64Array, gain: Float64Array): Float64Array {
  const bands = new Float64Array(BAND_COUNT)
  for (let b = 0; b < BAND_COUNT; b++) {
    const g = EVIDENCE_BANDS[b]!.firstCell
    bands[b] = energy[g]! * gain[g]! + energy[g + 1]! * gain[g + 1]! + energy[g + 2]! * gain[g + 2]!
  }
  return bands
}

/** Every ring's energy is laid down at the middle of its energy: half a decay time after its onset. */
function addRings(tonal: readonly Float64Array[], grids: readonly FrameGrid[], heard: HeardRings): void {
  const { rings, gain, areBubbles } = heard
  const known = new Map<number, Float64Array>()
  for (let i = 0; i < rings.timeS.length; i++) {
    const timeS = rings.timeS[i]! + 0.5 / rings.decayPerS[i]!
    const bands = areBubbles ? bubbleBands(rings.pitchHz[i]!, gain, known) : bandEnergies(energyOf(rings, i), gain)
    addEnergy(tonal, grids, { timeS, bands, factor: areBubbles ? rings.amplitude[i]! ** 2 : 1 })
  }
}

function bubbleBands(pitchHz: number, gain: Float64Array, known: Map<number, Float64Array>): Float64Array {
  const step = pitchStep(pitchHz)
  let bands = known.get(step)
  if (bands === undefined) {
    bands = bandEnergies(bubbleEnergyAt(step), gain)
    known.set(step, bands)
  }
  return bands
}

function energyOf(rings: Rings, i: number): Float64Array {
  return ringEnergy({ amplitude: rings.amplitude[i]!, pitchHz: rings.pitchHz[i]!, decayPerS: rings.decayPerS[i]! })
}

/**
 * Powers as a finite clip shows them: noise scatters as a chi-squared variable with the frame's degrees of freedom, and
 * beats with what is tonal.
 *
 * @returns One array a band.
 */
export function scattered({ grids, noise, tonal }: FramePowers, random: Random): Float64Array[] {
  const result: Float64Array[] = []
  for (const grid of grids)
    for (let b = grid.from; b < grid.to; b++)
      result.push(scatteredBand(noise[b]!, tonal[b]!, grid.degreesOfFreedom[b - grid.from]! / 2, random))
  return result
}

function scatteredBand(noise: Float64Array, tonal: Float64Array, shape: number, random: Random): Float64Array {
  const k = 1 / (9 * shape)
  const root = Math.sqrt(k)
  return noise.map((n, i) => {
    const t = tonal[i]!
    const power = n * Math.max(0, 1 - k + random.normal() * root) ** 3
    if (t < 0.01 * n) return power + t
    const beat = Math.sqrt((2 * n * t) / shape) * random.normal()
    return Math.max(power + t + beat, 0.02 * (n + t))
  })
}
