import { depthAt } from '../line/depthAt'
import type { Line } from '../line/line'

export interface SuggestedSpacing {
  /** For the first pass over the whole line, m. */
  readonly coarseM: number
  /** Near the place that the first pass has found, m. */
  readonly fineM: number
  /** The depth that both come from, and that it was told and not assumed, m. */
  readonly depthM: number
  readonly depthTold: boolean
}

/** Nearer points share one footing, m. Chosen. */
const LEAST_M = 0.2
/** As a tape is read while pegs are laid, m. */
const ROUND_M = 0.05

/**
 * How far apart to set points, from the depth of the pipe.
 *
 * Sound that spreads evenly from a depth d is 3 dB down at a distance d beside the place right above it, as
 * 20 lg(√(d² + d²) / d) = 3.0 dB. With two depths between points no leak is more than that off its nearest point; with
 * one depth between them, two points at least lie within that width. Where depths differ, the shallowest counts.
 */
export function suggestedSpacing(line: Line): SuggestedSpacing {
  const lengthM = line.lengthM ?? 0
  const here = [0, lengthM, ...line.stretches.map(({ fromM, toM }) => (fromM + toM) / 2)]
  const depths = here.filter((alongM) => alongM >= 0 && alongM <= lengthM).map((alongM) => depthAt(line, alongM))
  const shallowest = depths.reduce((least, each) => (each.depthM < least.depthM ? each : least))
  const { depthM, told } = shallowest
  return { coarseM: rounded(2 * depthM), fineM: rounded(depthM), depthM, depthTold: told }
}

function rounded(spacingM: number): number {
  return Math.max(LEAST_M, Number((Math.round(spacingM / ROUND_M) * ROUND_M).toFixed(6)))
}
