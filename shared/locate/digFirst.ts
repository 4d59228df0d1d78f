import type { Line } from '../line/line'
import { type DigPiece, digOrder } from './digOrder'
import { massBetween } from './window'

/** Where leaks may lie. */
export interface DigDensity {
  /** Even grid, m along. */
  readonly alongM: Float64Array
  /** Its mass over a piece is the probability that the piece holds a leak, 1/m. */
  readonly perM: Float64Array
}

/**
 * In which order to open the pieces of the windows, so that the expected cost is least (`digOrder`).
 *
 * Windows are cut where the cost of digging changes; windows that touch or overlap are one.
 *
 * @param windowsM Of one source or several, m along, in any order.
 */
export function digFirst(
  line: Line,
  windowsM: readonly (readonly [number, number])[],
  density: DigDensity,
): DigPiece[] {
  return digOrder(joined(windowsM).flatMap((window) => piecesOf(line, window, density)))
}

function joined(windowsM: readonly (readonly [number, number])[]): [number, number][] {
  const out: [number, number][] = []
  for (const [low, high] of [...windowsM].sort(([a], [b]) => a - b)) {
    const last = out.at(-1)
    if (last && low <= last[1]) last[1] = Math.max(last[1], high)
    else out.push([low, high])
  }
  return out
}

function piecesOf(
  { stretches }: Line,
  [low, high]: readonly [number, number],
  { alongM, perM }: DigDensity,
): DigPiece[] {
  const cuts = stretches.flatMap(({ fromM, toM }) => [fromM, toM]).filter((cut) => cut > low && cut < high)
  const edges = [...new Set([low, ...cuts, high])].sort((a, b) => a - b)
  return edges.slice(1).map((toM, i) => {
    const fromM = edges[i]!
    const middle = (fromM + toM) / 2
    const perMetre = stretches.findLast((each) => each.fromM <= middle && middle <= each.toM)?.digCostPerM ?? null
    return {
      fromM,
      toM,
      probability: Math.min(1, massBetween(alongM, perM, fromM, toM)),
      cost: perMetre === null ? null : perMetre * (toM - fromM),
    }
  })
}
