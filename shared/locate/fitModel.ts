import { median, quantile } from '../base/statistics'
import type { GroundPrior } from '../ground/groundPrior'
import type { Cover } from '../line/line'
import type { BandRow, SettingDown } from './settingDown'
import { toldFloors } from './toldFloors'

/** How far levels scatter round what the model expects, standard deviations of one band at one setting-down, dB. */
export interface Noise {
  /** Where the floor is heard and no air-off clip tells it; one a band. */
  readonly floorSdDb: Float64Array
  /** Of what is heard of a source: countable bubbles, and what the ground's law leaves out; one a band. */
  readonly sourceSdDb: Float64Array
  readonly floor: FloorHabit
}

/** How the floor differs from one setting-down to the next. */
export interface FloorHabit {
  /**
   * Whether an air-off clip tells the floor under the air-on clip beside it whatever its spectrum, or is one more clip of
   * a floor that has the same spectrum everywhere.
   */
  readonly isTold: boolean
  /** Its own level (dB) and tilt (dB an octave), standard deviations. */
  readonly levelSdDb: number
  readonly tiltSdDb: number
  /** How far it comes through the coupling as the leak does: 0 not at all, 1 wholly. */
  readonly coupling: { readonly mean: number; readonly sd: number }
}

const FREE = { levelSdDb: 3, tiltSdDb: 0.7, coupling: { mean: 0.6, sd: 0.4 } }
const STEADY = { levelSdDb: 1, tiltSdDb: 0.25, coupling: { mean: 1, sd: 0.1 } }

/**
 * Noise of the ground comes through the spike as the leak does; noise of the air and of the microphone does not, and a
 * floor may be another one at every place. Which it is, a sweep shows. The plainest stands last. Chosen.
 */
export const FLOOR_HABITS: readonly FloorHabit[] = [
  { isTold: true, ...FREE },
  { isTold: true, ...STEADY },
  { isTold: false, ...STEADY },
]

/** Before a sweep has shown its own. Chosen. */
export const EXPECTED_SD_DB = { floor: 1.5, source: 1.5 }

function expectedNoise(bands: number): Noise {
  return {
    floorSdDb: new Float64Array(bands).fill(EXPECTED_SD_DB.floor),
    sourceSdDb: new Float64Array(bands).fill(EXPECTED_SD_DB.source),
    floor: FLOOR_HABITS[0]!,
  }
}

/** Everything about a sweep that stays the same wherever a source is tried. */
export interface FitModel {
  readonly settings: readonly SettingDown[]
  readonly noise: Noise
  /** Mid-bands, kHz. */
  readonly bandKhz: Float64Array
  /** Octaves of each band above 500 Hz: what a tilt in dB per octave multiplies. */
  readonly bandOctaves: Float64Array
  readonly sweepCount: number
  /** Cover of each stretch that has points; each stretch answers a little differently to what comes from below. */
  readonly stretchCovers: readonly Cover[]
  /** Index into `stretchCovers` for each setting-down. */
  readonly stretchOf: Int32Array
  /** First guess of the floor, dBFS per band. */
  readonly floorDb: Float64Array
  /** Floor of each setting-down's air-on clip as its air-off clip tells it, dBFS per band; `null` without one. */
  readonly toldFloorDb: readonly (BandRow | null)[]
  /** How well it tells it, standard deviation in dB per band. */
  readonly toldSdDb: Float64Array
}

/** Where the numbers that all settings-down share stand in the parameter vector. */
export interface ShapeLayout {
  readonly spreading: 0
  readonly logAbsorption: 1
  readonly pipeLevel: 2
  readonly logPipeLoss: 3
  readonly logDepthRatio: 4
  /** Spreading exponent by frequency: a change an octave, and a curve over octaves. */
  readonly spreadingTilt: 5
  readonly spreadingCurve: 6
  /** Loss along the pipe that is the same at all frequencies, dB a metre. */
  readonly pipeLoss: 7
  /** How far the floor, too, comes through the coupling of a setting-down: 0 not at all, 1 wholly. */
  readonly floorCoupling: 8
  /** Of what ran along a slab: level (dB), ln loss. */
  readonly slabLevel: 9
  readonly logSlabLoss: 10
  /** Of sources at the surface against the leak's ground: spreading, ln absorption, level along the pipe. */
  readonly surface: 11
  /** One a sweep: how much the air's sound grew over its walk, dB. */
  readonly drift: number
  /** One a sweep beyond the first: source level against the first sweep, dB. */
  readonly sweepSource: number
  /** One a sweep beyond the first: floor against the first sweep, dB. */
  readonly sweepFloor: number
  /** Four a stretch where there are several: level (dB), loss (dB a kHz), ln absorption, level along the pipe (dB). */
  readonly stretch: number
  /** One a band where some of the points stand on a slab: what it answers to against other ground, dB. */
  readonly slabResponse: number
  readonly count: number
}

/** True when some points stand on a slab and others do not. */
export function hasSlabEdge({ stretchCovers }: Pick<FitModel, 'stretchCovers'>): boolean {
  return stretchCovers.includes('slab') && stretchCovers.some((cover) => cover !== 'slab')
}

/** Numbers in which sources at the surface differ from the leak, and where each stands among them. */
export const SURFACE = 3
export const SURFACE_AT = { spreading: 0, logAbsorption: 1, pipeLevel: 2 } as const
/** Their standard deviations: an inlet stands in other ground, beside the line, at an unknown depth. Chosen. */
const SURFACE_SD = [0.3, 0.4, 5]

/** Numbers that each stretch has of its own, and where each stands among them. */
export const STRETCH = 4
export const STRETCH_AT = { level: 0, loss: 1, logAbsorption: 2, pipeLevel: 3 } as const
/** Frequency at which a stretch's loss a kHz changes nothing, kHz. */
export const MIDDLE_KHZ = 0.5

export function shapeLayout(model: FitModel): ShapeLayout {
  const drift = 11 + SURFACE
  const sweepSource = drift + model.sweepCount
  const sweepFloor = sweepSource + model.sweepCount - 1
  const stretch = sweepFloor + model.sweepCount - 1
  const slabResponse = stretch + (model.stretchCovers.length > 1 ? STRETCH * model.stretchCovers.length : 0)
  return {
    spreading: 0,
    logAbsorption: 1,
    pipeLevel: 2,
    logPipeLoss: 3,
    logDepthRatio: 4,
    spreadingTilt: 5,
    spreadingCurve: 6,
    pipeLoss: 7,
    floorCoupling: 8,
    slabLevel: 9,
    logSlabLoss: 10,
    surface: 11,
    drift,
    sweepSource,
    sweepFloor,
    stretch,
    slabResponse,
    count: slabResponse + (hasSlabEdge(model) ? model.bandKhz.length : 0),
  }
}

/** Growth or fading of the air's sound over a walk, standard deviation in dB. Chosen: up to 6 dB is common practice, no source. */
const DRIFT_SD_DB = 3
/** Level of one sweep against another, standard deviation in dB. Chosen: another day, another gain. */
const SWEEP_SD_DB = 8
/** Of a stretch, standard deviations: level (dB), loss (dB a kHz), ln absorption, level along the pipe (dB). Chosen. */
const STRETCH_SD = [1.5, 1.5, 0.15, 2]
/** A slab is another surface. Chosen. */
const SLAB_SD = [3, 1.5, 0.15, 2]
/** Spreading exponent by frequency: near field and surface waves make low bands differ. Chosen. */
const SPREADING_TILT = { mean: -0.06, sd: 0.1 }
/** What enters a slab, and its loss of 0.5 to 5 dB a metre at 1 kHz: loss factors of 0.03 to 0.3 [CremerHeckl]. Chosen. */
const SLAB_LEVEL = { mean: -6, sd: 4 }
const LOG_SLAB_LOSS = { mean: Math.log(1.7), sd: 0.7 }
/** A slab's answer by band: mass and bed as a spring. Chosen. */
const SLAB_RESPONSE_SD_DB = 4
/** What sound loses along the pipe whatever its frequency: joints and bends. Chosen. */
const PIPE_LOSS_DB_PER_M = { mean: 0.7, sd: 0.5 }
const SPREADING_CURVE = { mean: 0, sd: 0.04 }

/** Means and standard deviations of the shape, in the order of its layout. */
export function shapePrior(model: FitModel, ground: GroundPrior): { mean: Float64Array; sd: Float64Array } {
  const layout = shapeLayout(model)
  const mean = new Float64Array(layout.count)
  const sd = new Float64Array(layout.count)
  const five = [ground.spreading, ground.logAbsorption, ground.pipeLevelDb, ground.logPipeLoss, ground.logDepthRatio]
  for (const [i, prior] of five.entries()) {
    mean[i] = prior.mean
    sd[i] = prior.sd
  }
  sd.fill(DRIFT_SD_DB, layout.drift, layout.sweepSource)
  sd.set(SURFACE_SD, layout.surface)
  mean[layout.slabLevel] = SLAB_LEVEL.mean
  sd[layout.slabLevel] = SLAB_LEVEL.sd
  mean[layout.logSlabLoss] = LOG_SLAB_LOSS.mean
  sd[layout.logSlabLoss] = LOG_SLAB_LOSS.sd
  sd.fill(SLAB_RESPONSE_SD_DB, layout.slabResponse)
  mean[layout.floorCoupling] = model.noise.floor.coupling.mean
  sd[layout.floorCoupling] = model.noise.floor.coupling.sd
  mean[layout.spreadingTilt] = SPREADING_TILT.mean
  sd[layout.spreadingTilt] = SPREADING_TILT.sd
  mean[layout.spreadingCurve] = SPREADING_CURVE.mean
  sd[layout.spreadingCurve] = SPREADING_CURVE.sd
  mean[layout.pipeLoss] = PIPE_LOSS_DB_PER_M.mean
  sd[layout.pipeLoss] = PIPE_LOSS_DB_PER_M.sd
  sd.fill(SWEEP_SD_DB, layout.sweepSource, layout.stretch)
  for (let i = layout.stretch; i < layout.slabResponse; i++) {
    const cover = model.stretchCovers[Math.floor((i - layout.stretch) / STRETCH)]!
    sd[i] = (cover === 'slab' ? SLAB_SD : STRETCH_SD)[(i - layout.stretch) % STRETCH]!
  }
  return { mean, sd }
}

/**
 * Builds the model of a sweep.
 *
 * @param settings At least one; all with the same number of bands.
 * @param bandHz   Mid-bands that weigh, Hz.
 */
export function fitModel(settings: readonly SettingDown[], bandHz: readonly number[], sweepCount: number): FitModel {
  const stretches = [...new Set(settings.map((setting) => setting.stretch))].sort((a, b) => a - b)
  return {
    settings,
    noise: expectedNoise(bandHz.length),
    bandKhz: Float64Array.from(bandHz, (hz) => hz / 1000),
    bandOctaves: Float64Array.from(bandHz, (hz) => Math.log2(hz / 500)),
    sweepCount,
    stretchCovers: stretches.map((stretch) => settings.find((setting) => setting.stretch === stretch)!.cover),
    stretchOf: Int32Array.from(settings, (setting) => stretches.indexOf(setting.stretch)),
    floorDb: Float64Array.from(bandHz, (_, band) => floorGuess(settings, band)),
    ...toldFloors(settings, bandHz.length),
  }
}

/** Median of the air-off levels of a band; without any, the quiet fifth of the air-on levels. */
function floorGuess(settings: readonly SettingDown[], band: number): number {
  const levels = (air: 'on' | 'off') =>
    settings.flatMap((setting) => {
      const row = setting[air]
      return row && row.weight[band]! > 0 ? [row.levelDb[band]!] : []
    })
  const off = levels('off')
  if (off.length > 0) return median(off)
  const on = levels('on')
  return on.length > 0 ? quantile(on, 0.2) : -90
}
