import type { Cover } from '../line/line'

/**
 * What is believed of the ground before any clip was heard: means and standard deviations of the six numbers the fit
 * may move. Logarithms are natural.
 */
export interface GroundPrior {
  /** Spreading exponent of amplitude, dimensionless: level falls by 20·n·log10(r/d). */
  readonly spreading: Normal
  /** ln of the absorption in dB per metre and kilohertz. */
  readonly logAbsorption: Normal
  /** Level of the sound that went along the pipe against the direct one, right above the source, dB. */
  readonly pipeLevelDb: Normal
  /** ln of the loss along the pipe in dB per metre and kilohertz. */
  readonly logPipeLoss: Normal
  /** ln of the true depth over the told one. */
  readonly logDepthRatio: Normal
}

export interface Normal {
  readonly mean: number
  readonly sd: number
}

/**
 * Prior of the ground by the cover above the source.
 *
 * Soil absorption was measured at 0.12 to 0.96 dB per cm and kHz, that is 12 to 96 dB per m and kHz; loose and dry
 * ground less [OelzeOBrienDarmody2002]. The prior is log-normal with those two figures at −1.5 and +1.5 standard deviations, so that
 * ground a little outside is still thinkable. A concrete slab carries sound sideways with far less loss [CremerHeckl],
 * so there the fit may go down to almost none. Spreading of the amplitude is 1 for a body wave inside the medium, 0.5
 * for a surface wave, 2 for a body wave along the free surface [RichartHallWoods1970]; a burial depth is within a
 * wavelength, so the exponent is a fitted number between them, wide enough for all three. Loss along a water-filled plastic pipe is at least 1.5 to 3
 * dB per m and kHz from the wall alone [PinningtonBriscoe1994]; radiation to the ground adds to that.
 */
export function groundPrior(cover: Cover, depthTold: boolean): GroundPrior {
  const loss = ABSORPTION_DB_PER_M_KHZ[cover]
  return {
    spreading: cover === 'slab' ? { mean: 0.7, sd: 0.3 } : { mean: 1.25, sd: 0.45 },
    logAbsorption: { mean: (Math.log(loss.low) + Math.log(loss.high)) / 2, sd: Math.log(loss.high / loss.low) / 3 },
    pipeLevelDb: { mean: -18, sd: 8 },
    logPipeLoss: { mean: Math.log(5), sd: 0.6 },
    logDepthRatio: { mean: 0, sd: depthTold ? 0.15 : 0.4 },
  }
}

const SOIL = { low: 12, high: 96 } // 0.12 to 0.96 dB per cm and kHz [OelzeOBrienDarmody2002]
const ABSORPTION_DB_PER_M_KHZ: Record<Cover, { low: number; high: number }> = {
  grass: SOIL,
  soil: SOIL,
  gravel: SOIL,
  pavers: SOIL,
  slab: { low: 1, high: 60 }, // chosen: from nearly none in the concrete to soil below it
  other: { low: 4, high: 96 }, // chosen: anything
}
