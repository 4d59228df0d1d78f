import { ATMOSPHERE_PA } from '../base/units'
import { givePerPa } from './lineCompliance'
import { type PipeSize, pipeSize } from './pipeSizes'
import { PIPE_WALLS, type PipeWall } from './pipeWalls'
import { waterExpansionPerK } from './waterProperties'

const KELVIN_AT_0_C = 273.15

/** What is known of the pipe; `null` where it is not. */
export interface KnownPipe {
  readonly size: PipeSize | null
  readonly wall: PipeWall | null
}

/** The least and the most that something changes the pressure by, Pa; falls are negative. */
export interface PressureChange {
  readonly leastPa: number
  readonly mostPa: number
}

/** Smallest and largest of the sizes that this work meets, for a pipe whose size was not told. */
const USUAL_SIZES = [1, 2].map((nominalIn) => pipeSize(nominalIn)!)

/**
 * Pressure of a shut line for each degree, where it is full of water.
 *
 *     (β_water − 3·α_pipe) / (1/K + D/(E·e))
 *
 * In a plastic pipe it turns its sign at about 15 °C: colder water falls in pressure as it warms.
 *
 * @returns Pa/K. 1-1/2 in Schedule 40 at 20 °C: about 11.5 kPa (1.67 psi).
 */
export function fullLinePaPerK(size: PipeSize, wall: PipeWall, temperatureC: number): number {
  return (waterExpansionPerK(temperatureC) - 3 * wall.expansionPerK) / givePerPa({ size, wall })
}

/** Pressure of a pocket of gas that cannot grow, for each degree (Charles): p/T. @returns Pa/K. */
export function gasPocketPaPerK(gaugePa: number, temperatureC: number): number {
  return (gaugePa + ATMOSPHERE_PA) / (temperatureC + KELVIN_AT_0_C)
}

/**
 * What a change of temperature can have done to the gauge.
 *
 * How much air is in the line is not known, and it decides between a line full of water, which answers a degree with
 * psi, and a pocket of air, which answers with tenths: so this is a range, with all between.
 *
 * @param from The thermometer at the start and at the end, °C.
 * @param pipe What is not known of it is taken over the usual sizes, as PVC.
 */
export function temperatureEffect(
  from: { readonly startC: number; readonly endC: number; readonly gaugePa: number },
  pipe: KnownPipe,
): PressureChange {
  const sizes = pipe.size === null ? USUAL_SIZES : [pipe.size]
  const wall = pipe.wall ?? PIPE_WALLS.pvc
  const slopes = [from.startC, from.endC].flatMap((celsius) => [
    gasPocketPaPerK(from.gaugePa, celsius),
    ...sizes.map((size) => fullLinePaPerK(size, wall, celsius)),
  ])
  const changes = slopes.map((paPerK) => paPerK * (from.endC - from.startC))
  return { leastPa: Math.min(...changes), mostPa: Math.max(...changes) }
}
