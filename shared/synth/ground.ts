import type { Cover, SketchPlace } from '../line/line'
import type { LinePath } from '../line/linePath'
import { placeAlong } from '../line/placeAlong'
import { GRID_COUNT, GRID_HZ } from './grid'
import { type Medium, soilPower } from './groundPath'
import { type Plate, slabPower } from './slabPath'

/** Decibels of a power that has fallen to 1/e. */
const DB_PER_POWER_NEPER = 10 * Math.LOG10E

/** A part of the ground along the line, as it truly is. */
export interface GroundStretch {
  readonly fromM: number
  readonly toM: number
  readonly cover: Cover
  readonly depthM: number
  readonly medium: Medium
  /** What the cover itself takes from high frequencies, dB a kHz. Chosen: 0 to 2 soil and grass, 2 to 6 others. */
  readonly coverLossDbPerKhz: number
  readonly plate: Plate | null
}

/** The pipe as a carrier of sound. */
export interface Pipe {
  /** Loss along the pipe that does not depend on frequency, dB/m. */
  readonly lossDbPerM: number
  /** Loss in proportion to frequency, dB/m/kHz: 3.08 from the wall alone in 1.5 in PVC (loss factor 0.06), more from soil. */
  readonly lossDbPerMKhz: number
  readonly fittings: readonly PipeFitting[]
}

export interface PipeFitting {
  readonly atM: number
  /** What a fitting sends into the ground against a metre of plain pipe, as a length of pipe, m. */
  readonly radiatesLikeM: number
  /** What it takes from the sound that passes, dB. */
  readonly lossDb: number
}

export interface Ground {
  /** The true route. */
  readonly route: LinePath
  /** In order, without gaps; the first and last run on past the ends. */
  readonly stretches: readonly GroundStretch[]
  readonly pipe: Pipe
}

/** A place sound comes from or is heard at, by the line. */
export interface Spot {
  readonly alongM: number
  readonly offsetM: number
}

export function stretchAt(ground: Ground, alongM: number): GroundStretch {
  return ground.stretches.find((s) => alongM < s.toM) ?? ground.stretches[ground.stretches.length - 1]!
}

/** Soil on the way between two stretches: the mean of both, in absorption and speed. */
function between(a: Medium, b: Medium): Medium {
  if (a === b) return a
  return {
    ...b,
    absorptionDbPerCmKhz: (a.absorptionDbPerCmKhz + b.absorptionDbPerCmKhz) / 2,
    speedMPerS: (a.speedMPerS + b.speedMPerS) / 2,
  }
}

/**
 * Power at the microphone from a point source in the ground, straight through the ground, on the grid; against the
 * same source at 1 m in soil without loss.
 *
 * @param everyCell 1: every frequency of the grid; 3: only the middle of each band, the other cells stay 0.
 */
export function groundPower(
  ground: Ground,
  source: Spot & { readonly depthM: number },
  sensor: Spot,
  everyCell: 1 | 3 = 1,
): Float64Array {
  const heard = stretchAt(ground, sensor.alongM)
  const medium = between(stretchAt(ground, source.alongM).medium, heard.medium)
  const from = placeAlong(ground.route, source.alongM, source.offsetM)
  const to = placeAlong(ground.route, sensor.alongM, sensor.offsetM)
  const toSensorM = distanceM(from, to)
  const power = new Float64Array(GRID_COUNT)
  const plate = heard.plate
  const foot = placeAlong(ground.route, Math.min(Math.max(source.alongM, heard.fromM), heard.toM), 0)
  const path = {
    depthM: source.depthM,
    toSensorM,
    toFootM: distanceM(from, foot),
    footToSensorM: distanceM(foot, to),
  }
  for (let g = (everyCell - 1) / 2; g < GRID_COUNT; g += everyCell) {
    const f = GRID_HZ[g]!
    const bare = plate === null ? soilPower(medium, f, source.depthM, toSensorM) : slabPower(plate, medium, f, path)
    power[g] = bare * Math.exp((-heard.coverLossDbPerKhz * f) / 1000 / DB_PER_POWER_NEPER)
  }
  return power
}

function distanceM(a: SketchPlace, b: SketchPlace): number {
  return Math.hypot(a.xM - b.xM, a.yM - b.yM)
}
