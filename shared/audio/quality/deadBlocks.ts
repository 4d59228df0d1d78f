import type { ClipScan } from './clipScan'

/** Blocks of a clip in which nothing sounds, as shares of all blocks, 0 to 1. */
export interface DeadBlocks {
  readonly share: number
  /** Those of them that a switch or a lost connection made. */
  readonly holeShare: number
}

/** A block no louder than the dither of its converter is dead: triangular dither alone is 0.5 steps. */
const DEAD_STEPS = 0.6

/** No converter resolves less than 24 bits. */
const FINEST_STEP = 2 ** -23

/** A hole is this long, a tenth of a second, … */
const HOLE_BLOCKS = 10 // chosen

/** … and begins in the middle of sound this far above the steps; a bubble that dies away goes through all levels. */
const HOLE_STEPS = 4 // chosen

/** Where the clip begins dead, sound has to set in for this long, or it may be a bubble in a quiet clip. */
const SET_IN_BLOCKS = 20 // chosen

/**
 * How much of a clip is dead, and how much of that was cut out of sound.
 *
 * @param step Step of the converter, full scale; 0 when it has none.
 */
export function deadBlocks(scan: ClipScan, step: number): DeadBlocks {
  const { power } = scan
  const finest = Math.max(step, FINEST_STEP)
  const deadPower = (DEAD_STEPS * finest) ** 2
  const soundPower = (HOLE_STEPS * finest) ** 2
  let dead = 0
  let holes = 0
  for (let first = 0; first < power.length; ) {
    let after = first
    while (after < power.length && power[after]! <= deadPower) after++
    const length = after - first
    const setsIn = power.subarray(after, after + SET_IN_BLOCKS)
    const cut =
      first > 0 ? power[first - 1]! > soundPower : setsIn.length > 0 && setsIn.every((block) => block > soundPower)
    dead += length
    if (length >= HOLE_BLOCKS && cut) holes += length
    first = after + 1
  }
  return power.length === 0
    ? { share: 0, holeShare: 0 }
    : { share: dead / power.length, holeShare: holes / power.length }
}
