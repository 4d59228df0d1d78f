/** What the microphone gave in a tenth of a second or so. */
export interface HeardBlock {
  /** End of the block on the microphone's own clock, s; rising. */
  readonly atS: number
  readonly durationS: number
  /** Mean square, full scale 1. */
  readonly power: number
  /** Largest magnitude. */
  readonly peak: number
}

/** How long the sound must have been even before it counts as settled, s. Chosen: two whole swells of handling noise. */
export const SETTLED_AFTER_S = 2

/** Most that the loudest moments of its two halves may differ, as a power ratio: 4 dB. Chosen: gurgling stays within it. */
const EVEN_RATIO = 10 ** 0.4

/**
 * Whether the microphone lies still: the loudest moments of the last two seconds are as loud as each other. The
 * bubbling of a leak swells by itself, so it is not asked that all is even; a knock or a hand on the cable sticks out of
 * one of the halves.
 *
 * @param blocks The latest ones, in order of time; older ones than two seconds are left aside.
 * @returns False for less than two seconds, and for dead silence: nothing is plugged in then.
 */
export function isSettled(blocks: readonly HeardBlock[]): boolean {
  const endS = blocks.at(-1)?.atS ?? 0
  const [first] = blocks
  if (first === undefined || endS - (first.atS - first.durationS) < SETTLED_AFTER_S - 1e-6) return false
  const middleS = endS - SETTLED_AFTER_S / 2
  const loudest = (fromS: number, toS: number) =>
    blocks.reduce((most, { atS, power }) => (atS > fromS + 1e-6 && atS <= toS + 1e-6 ? Math.max(most, power) : most), 0)
  const [earlier, later] = [loudest(endS - SETTLED_AFTER_S, middleS), loudest(middleS, endS)]
  if (!(earlier > 0 && later > 0)) return false
  return earlier <= EVEN_RATIO * later && later <= EVEN_RATIO * earlier
}
