import { ASSUMED_DEPTH_M, type Line } from './line'
import { stretchAt } from './stretchAt'

/**
 * Cover over the pipe at a distance along the line.
 *
 * @returns The stretch's own depth, else the line's, else the assumed one; m. `told` is false for the assumed one,
 *   which needs a wide prior and its reason shown.
 */
export function depthAt(
  line: Pick<Line, 'stretches' | 'depthM'>,
  alongM: number,
): { readonly depthM: number; readonly told: boolean } {
  const depthM = stretchAt(line, alongM)?.depthM ?? line.depthM
  return { depthM: depthM ?? ASSUMED_DEPTH_M, told: depthM !== null }
}
