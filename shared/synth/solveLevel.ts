import { meanPsd } from './drawEmitters'
import { bandPower, type GridBand, SIGNAL_BANDS } from './grid'
import type { Ground, Spot } from './ground'
import { hearing } from './hearing'
import type { Emitter } from './yard'

/** How an emitter stands over a floor at a place. */
export interface OverFloor {
  readonly overFloorDb: number
  readonly bestBand: GridBand
}

/**
 * Mean power of an emitter over a floor at a place, in the one-third-octave band from 100 Hz to 3.15 kHz where it
 * stands highest. Tones are left out.
 *
 * @param floorPsd Power per hertz on the grid, > 0.
 */
export function overFloor(ground: Ground, emitter: Emitter, spot: Spot, floorPsd: Float64Array): OverFloor {
  const heard = hearing(ground, emitter, spot)
  const psd = meanPsd(emitter).map((p, g) => p * heard[g]!)
  let best: OverFloor = { overFloorDb: Number.NEGATIVE_INFINITY, bestBand: SIGNAL_BANDS[0]! }
  for (const band of SIGNAL_BANDS) {
    const overFloorDb = 10 * Math.log10(bandPower(psd, band) / bandPower(floorPsd, band))
    if (overFloorDb > best.overFloorDb) best = { overFloorDb, bestBand: band }
  }
  return best
}
