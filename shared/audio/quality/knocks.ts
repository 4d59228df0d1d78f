import { median } from '../../base/statistics'
import type { ClipScan } from './clipScan'

/** Thumps of the microphone, its cable or the ground close by. */
export interface Knocks {
  readonly count: number
  /** Share of the clip's tenths of a second with one, 0 to 1. */
  readonly share: number
}

/** Over the clip's usual block: bass, treble and the whole for a knock that has everything … */
const BASS_RATIO = 100 // chosen: 20 dB; a ringing bubble has its skirts 25 dB and more below its peak
const TREBLE_RATIO = 30 // chosen: 15 dB
const WHOLE_RATIO = 30 // chosen: 15 dB

/** … and the bass alone for a dull one, which then must be all bass. */
const DULL_RATIO = 300 // chosen: 25 dB
const DULL_SHARE = 4 // chosen: bass against the rest

/** Blocks that belong to one knock although the level dipped between them. */
const GAP_BLOCKS = 5

/** A knock leaps up within this many blocks by this ratio, and is over after that many. */
const RISE_BLOCKS = 3
const RISE_RATIO = 10 // chosen: 10 dB; what swells slower is wind or a passing car
const LONGEST_BLOCKS = 30 // chosen: a third of a second; a loud syllable or a gust goes on

const TILE_BLOCKS = 10

/**
 * Counts short moments where bass and treble leap up together, or where the bass alone leaps far.
 *
 * A bubble rings at one pitch between them, and rain or crackle has no bass.
 *
 * @param bass Mean square of the bass in each block.
 */
export function knocks(scan: ClipScan, bass: Float64Array): Knocks {
  if (bass.length === 0) return { count: 0, share: 0 }
  const tiles = new Uint8Array(Math.ceil(bass.length / TILE_BLOCKS))
  let count = 0
  for (const { first, last } of loudMoments(scan, bass)) {
    const before = Math.max(0, first - RISE_BLOCKS)
    const peak = (powers: Float64Array) =>
      powers.subarray(first, first + RISE_BLOCKS).reduce((a, b) => Math.max(a, b), 0)
    const leaps = peak(scan.power) > RISE_RATIO * scan.power[before]! || peak(bass) > RISE_RATIO * bass[before]!
    if (!leaps || last - first >= LONGEST_BLOCKS) continue
    count++
    tiles.fill(1, Math.floor(first / TILE_BLOCKS), Math.floor(last / TILE_BLOCKS) + 1)
  }
  return { count, share: tiles.reduce((sum, tile) => sum + tile, 0) / tiles.length }
}

/** First and last block of each stretch that is loud the way a knock is. */
function loudMoments(scan: ClipScan, bass: Float64Array): { first: number; last: number }[] {
  const usualBass = median(bass)
  const usualTreble = median(scan.roughness)
  const usualWhole = median(scan.power)
  const moments: { first: number; last: number }[] = []
  for (let i = 0; i < bass.length; i++) {
    const full =
      bass[i]! > BASS_RATIO * usualBass &&
      scan.roughness[i]! > TREBLE_RATIO * usualTreble &&
      scan.power[i]! > WHOLE_RATIO * usualWhole
    const dull = bass[i]! > DULL_RATIO * usualBass && bass[i]! > DULL_SHARE * scan.power[i]!
    if (!full && !dull) continue
    const current = moments[moments.length - 1]
    if (current !== undefined && i - current.last <= GAP_BLOCKS) current.last = i
    else moments.push({ first: i, last: i })
  }
  return moments
}
