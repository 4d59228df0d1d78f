import type { LinePath } from '../line/linePath'

/**
 * Beside which side of the line pegs had better stand: outside the nearest bend, where there is room.
 *
 * @returns 1 for the left looking from start to end, -1 for the right; the left on a straight line.
 */
export function pegSide(path: LinePath, alongM: number): 1 | -1 {
  let side: 1 | -1 = 1
  let nearestM = Number.POSITIVE_INFINITY
  for (let i = 1; i + 1 < path.alongM.length; i++) {
    const awayM = Math.abs(path.alongM[i]! - alongM)
    if (awayM >= nearestM) continue
    nearestM = awayM
    const turn =
      (path.xM[i]! - path.xM[i - 1]!) * (path.yM[i + 1]! - path.yM[i]!) -
      (path.yM[i]! - path.yM[i - 1]!) * (path.xM[i + 1]! - path.xM[i]!)
    side = turn > 0 ? -1 : 1
  }
  return side
}
