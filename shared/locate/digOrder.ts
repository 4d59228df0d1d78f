import type { LocateAnswer } from './answer'

/** A piece of the line that can be opened by itself. */
export type DigPiece = LocateAnswer['digFirst'][number]

/** Keeps the division safe where a piece has no length, m. */
const SHORTEST_M = 1e-9

/**
 * Puts pieces in the order that is expected to cost least: the largest probability for its cost first.
 *
 * Where any piece has no cost, or costs nothing, all are ordered by probability a metre; equals by along.
 *
 * @see Blackwell's rule, as in Chew 1967, A sequential search procedure. [Chew1967] in shared/base/sources.ts
 */
export function digOrder(pieces: readonly DigPiece[]): DigPiece[] {
  const costed = pieces.every(({ cost }) => cost !== null && cost > 0)
  const worth = ({ probability, cost, fromM, toM }: DigPiece) =>
    probability / (costed ? cost! : Math.max(toM - fromM, SHORTEST_M))
  return [...pieces].sort((a, b) => worth(b) - worth(a) || a.fromM - b.fromM)
}
