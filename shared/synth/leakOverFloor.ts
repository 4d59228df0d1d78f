import { overFloor } from './solveLevel'
import type { ClipPlan, Yard } from './yard'

/**
 * How far the loudest leak stands over floor and self-noise at a clip's place, in its best band, as the air goes then, dB.
 *
 * @returns `null` with the air off and in a yard without a leak.
 */
export function leakOverFloorDb(yard: Yard, plan: ClipPlan): number | null {
  if (plan.row.air === 'off') return null
  const floor = yard.floorPsd.map((p, g) => p + yard.selfNoisePsd[g]!)
  const leaks = yard.emitters.filter((emitter) => emitter.kind === 'leak')
  if (leaks.length === 0) return null
  return Math.max(...leaks.map((leak) => overFloor(yard.ground, leak, plan.spot, floor).overFloorDb + plan.driftDb))
}
