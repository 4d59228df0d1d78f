import type { Line } from '../line/line'
import type { LocateAnswer, Source } from './answer'
import { massBetween } from './window'

/**
 * In which order to open the pieces of a source's window: the largest probability for its cost first, which makes the
 * expected cost least.
 *
 * The window is cut where covers or costs change. Where any piece has no cost, all are ordered by probability a metre.
 *
 * @see Blackwell's rule, as in Chew 1967, A sequential search procedure. [Chew1967] in shared/base/sources.ts
 */
export function digFirst(
  line: Line,
  source: Source,
  alongM: Float64Array,
  perM: Float64Array,
): LocateAnswer['digFirst'] {
  const [low, high] = source.windowM
  const cuts = line.stretches.flatMap(({ fromM, toM }) => [fromM, toM]).filter((cut) => cut > low && cut < high)
  const edges = [...new Set([low, ...cuts, high])].sort((a, b) => a - b)
  const pieces = edges.slice(1).map((toM, i) => {
    const fromM = edges[i]!
    const middle = (fromM + toM) / 2
    const stretch = line.stretches.findLast((each) => each.fromM <= middle && middle <= each.toM)
    const perMetre = stretch?.digCostPerM ?? null
    return {
      fromM,
      toM,
      probability: massBetween(alongM, perM, fromM, toM),
      cost: perMetre === null ? null : perMetre * (toM - fromM),
    }
  })
  const costed = pieces.every((piece) => piece.cost !== null && piece.cost > 0)
  const worth = (piece: (typeof pieces)[number]) =>
    piece.probability / (costed ? piece.cost! : Math.max(piece.toM - piece.fromM, 1e-9))
  return pieces.sort((a, b) => worth(b) - worth(a) || a.fromM - b.fromM)
}
