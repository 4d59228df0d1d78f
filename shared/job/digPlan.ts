import type { Cover, Line } from '../line/line'
import type { LocateAnswer } from '../locate/answer'
import { digFirst } from '../locate/digFirst'
import type { DigPiece } from '../locate/digOrder'
import { expectedDigCost } from '../locate/expectedDigCost'
import type { Digging } from './digging'

/** A piece of the window with one cover. */
export interface PlannedPiece extends DigPiece {
  /** Place of its stretch in the line's list; `null` where none was told. */
  readonly stretch: number | null
  readonly cover: Cover | null
  /** To open it, minutes; `null` where not told. */
  readonly minutes: number | null
}

/** In which order to open, and what that is expected to take. Costs in the unit they were typed in. */
export interface DigPlan {
  /** In the order advised. */
  readonly pieces: readonly PlannedPiece[]
  readonly expectedCost: number | null
  readonly likeliestFirstCost: number | null
  readonly expectedMin: number | null
  /** What is saved by leaving slab for last; `null` where there is no slab among other covers, or no cost. */
  readonly slabLastSaves: number | null
  /** A new pipe round instead of opening: what it costs, and what it saves beside opening; `null` where not told. */
  readonly round: { readonly cost: number; readonly saves: number } | null
}

/**
 * The order of opening with costs and times as they are told of the stretches now.
 *
 * @param digging What was told of a way round.
 */
export function digPlan(
  line: Line,
  { sources, density }: Pick<LocateAnswer, 'sources' | 'density'>,
  digging: Digging,
): DigPlan {
  const windows = sources.map(({ windowM }) => windowM)
  const even = { alongM: Float64Array.from(density.alongM), perM: Float64Array.from(density.perM) }
  const pieces = digFirst(line, windows, even).map((piece) => planned(line, piece))
  const expectedCost = expectedDigCost(pieces)
  const slabFirst = expectedDigCost([...pieces.filter(isSlab), ...pieces.filter((piece) => !isSlab(piece))])
  const isMixed = pieces.some(isSlab) && !pieces.every(isSlab)
  const { roundM, roundCostPerM } = digging
  const roundCost = roundM === null || roundCostPerM === null ? null : roundM * roundCostPerM
  return {
    pieces,
    expectedCost,
    likeliestFirstCost: expectedDigCost([...pieces].sort((a, b) => b.probability - a.probability || a.fromM - b.fromM)),
    expectedMin: expectedDigCost(pieces.map((piece) => ({ ...piece, cost: piece.minutes }))),
    slabLastSaves: isMixed && slabFirst !== null && expectedCost !== null ? slabFirst - expectedCost : null,
    round: roundCost === null || expectedCost === null ? null : { cost: roundCost, saves: expectedCost - roundCost },
  }
}

const isSlab = ({ cover }: PlannedPiece) => cover === 'slab'

function planned({ stretches }: Line, piece: DigPiece): PlannedPiece {
  const middle = (piece.fromM + piece.toM) / 2
  const at = stretches.findLastIndex(({ fromM, toM }) => fromM <= middle && middle <= toM)
  const told = stretches[at]
  return {
    ...piece,
    stretch: told === undefined ? null : at,
    cover: told?.cover ?? null,
    minutes: told?.digMinPerM === undefined ? null : told.digMinPerM * (piece.toM - piece.fromM),
  }
}
