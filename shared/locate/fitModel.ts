import { median, quantile } from '../base/statistics'
import type { GroundPrior } from '../ground/groundPrior'
import type { Cover } from '../line/line'
import type { BandRow, SettingDown } from './settingDown'
import { toldFloors } from './toldFloors'

/** Everything about a sweep that stays the same wherever a source is tried. */
export interface FitModel {
  readonly settings: readonly SettingDown[]
  /** Mid-bands, kHz. */
  readonly bandKhz: Float64Array
  /** Octaves of each band above 500 Hz: what a tilt in dB per octave multiplies. */
  readonly bandOctaves: Float64Array
  readonly sweepCount: number
  /** Covers of the points, the most common first; the others have a level offset against it. */
  readonly covers: readonly Cover[]
  /** Index into `covers` for each setting-down. */
  readonly coverOf: Int32Array
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
  /** One a sweep: how much the air's sound grew over its walk, dB. */
  readonly drift: number
  /** One a sweep beyond the first: source level against the first sweep, dB. */
  readonly sweepSource: number
  /** One a sweep beyond the first: floor against the first sweep, dB. */
  readonly sweepFloor: number
  /** One a cover beyond the first: what sounds from below read there against the first cover, dB. */
  readonly cover: number
  readonly count: number
}

export function shapeLayout(model: FitModel): ShapeLayout {
  const drift = 5
  const sweepSource = drift + model.sweepCount
  const sweepFloor = sweepSource + model.sweepCount - 1
  const cover = sweepFloor + model.sweepCount - 1
  return {
    spreading: 0,
    logAbsorption: 1,
    pipeLevel: 2,
    logPipeLoss: 3,
    logDepthRatio: 4,
    drift,
    sweepSource,
    sweepFloor,
    cover,
    count: cover + model.covers.length - 1,
  }
}

/** Growth or fading of the air's sound over a walk, standard deviation in dB. Chosen: up to 6 dB is common practice, no source. */
const DRIFT_SD_DB = 3
/** Level of one sweep against another, standard deviation in dB. Chosen: another day, another gain. */
const SWEEP_SD_DB = 8
/** Level of one cover against another, standard deviation in dB. Chosen: a slab is another surface. */
const COVER_SD_DB = 5

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
  sd.fill(SWEEP_SD_DB, layout.sweepSource, layout.cover)
  sd.fill(COVER_SD_DB, layout.cover)
  return { mean, sd }
}

/**
 * Builds the model of a sweep.
 *
 * @param settings At least one; all with the same number of bands.
 * @param bandHz   Mid-bands that weigh, Hz.
 */
export function fitModel(settings: readonly SettingDown[], bandHz: readonly number[], sweepCount: number): FitModel {
  const covers = byFrequency(settings.map((setting) => setting.cover))
  return {
    settings,
    bandKhz: Float64Array.from(bandHz, (hz) => hz / 1000),
    bandOctaves: Float64Array.from(bandHz, (hz) => Math.log2(hz / 500)),
    sweepCount,
    covers,
    coverOf: Int32Array.from(settings, (setting) => covers.indexOf(setting.cover)),
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

function byFrequency(covers: readonly Cover[]): Cover[] {
  const counts = new Map<Cover, number>()
  for (const cover of covers) counts.set(cover, (counts.get(cover) ?? 0) + 1)
  return [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1)).map(([cover]) => cover)
}
