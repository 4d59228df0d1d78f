import { median } from '../../base/statistics'
import type { ClipScan } from './clipScan'

/** Thumps of the microphone, its cable or the ground close by. */
export interface Knocks {
  readonly count: number
  /** Share of the clip's tenths of a second with one, 0 to 1. */
  readonly share: number
}

/** Over the clip's usual block: bass, treble and the whole for a knock that has everything … */
const BASS_RATIO = 100 // chosen: 20 dB
const TREBLE_RATIO = 30 // chosen: 15 dB
const WHOLE_RATIO = 30 // chosen: 15 dB

/** … of which the bass is this share at least (a bubble of Q 10 at 300 Hz that starts at once has a sixtieth there) … */
const BASS_SHARE = 1 / 6 // chosen

/** … or a smaller one, when the treble is that of a tone above all bubbles of 2 mm and more. */
const CLICK_BASS_SHARE = 1 / 30 // chosen
const CLICK_HZ = 2_500 // chosen

/** The filter that the bass comes from answers this much later, so it is held against the loudest of these blocks. */
const LATE_BLOCKS = 3

/** … and the bass alone for a dull one, which then must be all bass. */
const DULL_RATIO = 300 // chosen: 25 dB
const DULL_SHARE = 4 // chosen: bass against the rest

/** Blocks that belong to one knock although the level dipped between them. */
const GAP_BLOCKS = 5

/** A knock leaps up by this ratio over the loudest of the blocks before it, and is over after that many blocks. */
const RISE_RATIO = 10 // chosen: 10 dB; what swells slower is wind or a passing car
const BEFORE_BLOCKS = 10
const RISE_BLOCKS = 3
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
    const leaps = leapsUp(scan.power, first) || leapsUp(bass, first)
    if (!leaps || last - first >= LONGEST_BLOCKS) continue
    count++
    tiles.fill(1, Math.floor(first / TILE_BLOCKS), Math.floor(last / TILE_BLOCKS) + 1)
  }
  return { count, share: tiles.reduce((sum, tile) => sum + tile, 0) / tiles.length }
}

function leapsUp(powers: Float64Array, first: number): boolean {
  const before = powers.subarray(Math.max(0, first - RISE_BLOCKS - BEFORE_BLOCKS), Math.max(0, first - RISE_BLOCKS))
  const peak = powers.subarray(first, first + RISE_BLOCKS)
  return before.length > 0 && Math.max(...peak) > RISE_RATIO * Math.max(...before)
}

/** First and last block of each stretch that is loud the way a knock is. */
function loudMoments(scan: ClipScan, bass: Float64Array): { first: number; last: number }[] {
  const usualBass = median(bass)
  const usualTreble = median(scan.roughness)
  const usualWhole = median(scan.power)
  // The second difference of a tone: (2·sin(π·f / rate))⁴ of its power.
  const clickTreble = (2 * Math.sin((Math.PI * CLICK_HZ) / (scan.slowRateHz * scan.slowFactor))) ** 4
  const moments: { first: number; last: number }[] = []
  for (let i = 0; i < bass.length; i++) {
    const whole = Math.max(...scan.power.subarray(Math.max(0, i - LATE_BLOCKS), i + 1))
    const full =
      bass[i]! > BASS_RATIO * usualBass &&
      scan.roughness[i]! > TREBLE_RATIO * usualTreble &&
      scan.power[i]! > WHOLE_RATIO * usualWhole &&
      (bass[i]! > BASS_SHARE * whole ||
        (bass[i]! > CLICK_BASS_SHARE * whole && scan.roughness[i]! > clickTreble * scan.power[i]!))
    const dull = bass[i]! > DULL_RATIO * usualBass && bass[i]! > DULL_SHARE * whole
    if (!full && !dull) continue
    const current = moments[moments.length - 1]
    if (current !== undefined && i - current.last <= GAP_BLOCKS) current.last = i
    else moments.push({ first: i, last: i })
  }
  return moments
}
