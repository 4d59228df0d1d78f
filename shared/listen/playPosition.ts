/** A stretch of time that is played again and again. */
export interface Loop {
  readonly fromS: number
  readonly toS: number
}

/** The shortest loop, s: below that it is a tone of its own. */
export const SHORTEST_LOOP_S = 0.2

/**
 * Where a clip is that began at `offsetS` and has sounded for `elapsedS`.
 *
 * As Web Audio loops: from the offset to the loop's end, then round and round. An offset past the loop's end jumps to
 * its start at once.
 *
 * @returns s from the clip's start, never past its end.
 */
export function playPosition(
  offsetS: number,
  elapsedS: number,
  { loop, durationS }: { readonly loop: Loop | null; readonly durationS: number },
): number {
  const at = offsetS + Math.max(0, elapsedS)
  if (loop === null) return Math.min(durationS, at)
  if (at < loop.toS) return at
  const begunS = Math.max(offsetS, loop.toS)
  return loop.fromS + ((at - begunS) % (loop.toS - loop.fromS))
}

/**
 * A loop from two times as they were dragged: in order, within the clip, and not too short.
 *
 * @returns `null` for a clip shorter than the shortest loop.
 */
export function loopBetween(aS: number, bS: number, durationS: number): Loop | null {
  if (durationS < SHORTEST_LOOP_S) return null
  const fromS = Math.min(durationS - SHORTEST_LOOP_S, Math.max(0, Math.min(aS, bS)))
  return { fromS, toS: Math.min(durationS, Math.max(Math.max(aS, bS), fromS + SHORTEST_LOOP_S)) }
}
