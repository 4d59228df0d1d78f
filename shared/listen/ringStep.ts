import type { Ring } from '../bubbles/ring'

/** How near a ring must be to count as the one being heard, s. */
const HERE_S = 0.04

/**
 * The next ring after, or the last one before, a time; round the end to the other side.
 *
 * A ring within 40 ms of the time is where one already is: going on from there leads to another one.
 *
 * @param rings In order of time.
 * @returns `null` when there are none.
 */
export function ringStep(rings: readonly Ring[], timeS: number, direction: 'next' | 'previous'): Ring | null {
  if (direction === 'next') return rings.find((ring) => ring.timeS > timeS + HERE_S) ?? rings[0] ?? null
  return rings.findLast((ring) => ring.timeS < timeS - HERE_S) ?? rings.at(-1) ?? null
}
