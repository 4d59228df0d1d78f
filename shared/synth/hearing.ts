import { GRID_COUNT, gridPlace } from './grid'
import { type Ground, groundPower, type Spot, stretchAt } from './ground'
import { alongPipePower } from './pipePath'
import type { Emitter } from './yard'

const MATCH_CELL = Math.round(gridPlace(400))

/**
 * Power with which an emitter arrives at a place on the surface, on the grid, against the emitter at 1 m: straight
 * through the ground, and along the pipe. Not to be written to.
 */
export function hearing(ground: Ground, emitter: Emitter, sensor: Spot): Float64Array {
  let spots = heard.get(emitter)
  if (spots === undefined) {
    spots = new Map()
    heard.set(emitter, spots)
  }
  let power = spots.get(sensor)
  if (power === undefined) {
    power = heardAt(ground, emitter, sensor)
    spots.set(sensor, power)
  }
  return power
}

/** Clips of one point stand at one spot: what was worked out is kept for as long as the emitter is. */
const heard = new WeakMap<Emitter, Map<Spot, Float64Array>>()

function heardAt(ground: Ground, emitter: Emitter, sensor: Spot): Float64Array {
  const power = groundPower(ground, emitter, sensor)
  if (emitter.pipeDb === null) return power
  const scale = pipeScale(ground, emitter)
  const pipe = alongPipePower(ground, emitter, sensor)
  for (let g = 0; g < GRID_COUNT; g++) power[g]! += scale * pipe[g]!
  return power
}

const scales = new WeakMap<Emitter, number>()

/** What a metre of pipe at the source must send out for the pipe path to stand `pipeDb` against the straight one. */
function pipeScale(ground: Ground, emitter: Emitter): number {
  const known = scales.get(emitter)
  if (known !== undefined) return known
  const above = { alongM: emitter.alongM, offsetM: 0 }
  const depthM = stretchAt(ground, emitter.alongM).depthM
  const straight = groundPower(ground, { ...above, depthM }, above)
  const pipe = alongPipePower(ground, emitter, above)
  const scale = (10 ** (emitter.pipeDb! / 10) * straight[MATCH_CELL]!) / pipe[MATCH_CELL]!
  scales.set(emitter, scale)
  return scale
}
