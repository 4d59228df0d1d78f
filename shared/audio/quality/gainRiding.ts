import { median, quantile } from '../../base/statistics'
import { powerToDb } from '../../base/units'
import type { ClipScan } from './clipScan'

/** What an automatic gain does to the noise floor. */
export interface GainRiding {
  /** Loud moments after which the floor ducked and crept back. */
  readonly dips: number
  /** Loud moments with enough quiet before and after to tell. */
  readonly chances: number
  /** Median depth of the dips, dB. */
  readonly dipDb: number
}

/** Blocks of a tile, a tenth of a second. */
const TILE_BLOCKS = 10

/** The floor of a tile: this quantile of its blocks' treble, which bubbling through soil does not reach. */
const FLOOR_QUANTILE = 0.2

/** A moment is loud when a block of its tile is this much over the clip's usual one. */
const LOUD_RATIO = 30 // chosen: 15 dB; gains are turned down for less, but hardly enough to see

/** Tiles looked at before and after; the first one after is left out for the sound to die away. */
const BEFORE_TILES = 5
const AFTER_TILES = 9

/** Before the loud moment the floor must be one: tiles of steady noise differ by less than this. */
const STEADY_DB = 3 // chosen

/** How deep the floor ducks, and how much of it comes back while it is looked at. */
const LEAST_DIP_DB = 5 // chosen
const LEAST_CREEP_DB = 1 // chosen: a floor of noise wanders by 0.2 dB

/**
 * Finds loud moments after which the floor of the treble lies lower than before and then creeps up.
 *
 * A sound that stops leaves a lower floor too, but it does not come back by itself in a slow rise.
 */
export function gainRiding(scan: ClipScan): GainRiding {
  const tiles = Math.floor(scan.power.length / TILE_BLOCKS)
  const floors: (number | null)[] = []
  const loud: boolean[] = []
  const usual = scan.power.length === 0 ? 0 : median(scan.power)
  for (let tile = 0; tile < tiles; tile++) {
    const blocks = [tile * TILE_BLOCKS, (tile + 1) * TILE_BLOCKS] as const
    floors.push(powerToDb(quantile(scan.roughness.subarray(...blocks), FLOOR_QUANTILE)))
    loud.push(scan.power.subarray(...blocks).some((power) => power > LOUD_RATIO * usual))
  }
  const depths: number[] = []
  let chances = 0
  for (let end = BEFORE_TILES; end + AFTER_TILES < tiles; end++) {
    if (!loud[end] || loud[end + 1]) continue
    const dip = dipAround(floors, loud, end)
    if (dip === null) continue
    chances++
    if (dip.depthDb > LEAST_DIP_DB && dip.creepDb > LEAST_CREEP_DB) depths.push(dip.depthDb)
  }
  return { dips: depths.length, chances, dipDb: depths.length === 0 ? 0 : median(depths) }
}

/** Depth and recovery round the loud moment that ends with this tile; `null` when it is not quiet enough around. */
function dipAround(
  floors: readonly (number | null)[],
  loud: readonly boolean[],
  end: number,
): { depthDb: number; creepDb: number } | null {
  let start = end
  while (start > 0 && loud[start - 1]) start--
  const before = start - BEFORE_TILES
  if (before < 0 || loud.slice(before, start).includes(true)) return null
  if (loud.slice(end + 1, end + 1 + AFTER_TILES).includes(true)) return null
  const known = (from: number, to: number) => floors.slice(from, to).filter((floor) => floor !== null)
  const level = (from: number, to: number) => (known(from, to).length === to - from ? median(known(from, to)) : null)
  const floor = level(before, start)
  const first = level(end + 2, end + 4)
  const second = level(end + 4, end + 7)
  const third = level(end + 7, end + 10)
  if (floor === null || first === null || second === null || third === null) return null
  const steady = Math.max(...known(before, start)) - Math.min(...known(before, start)) < STEADY_DB
  const creepDb = steady && second > first && third > second ? third - first : 0
  return { depthDb: floor - first, creepDb }
}
