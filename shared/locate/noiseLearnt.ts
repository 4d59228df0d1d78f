import { median } from '../base/statistics'
import { EXPECTED_NOISE, type FloorHabit, type Noise } from './fitModel'

/** A few cells before any were seen, the parameters that every setting-down spends, and the least and most, dB. Chosen. */
const LEARNING = { before: 12, spent: 1.25, least: 0.3, most: 3 }
/** A cell tells of the source from this share of source on, and of the floor below that one. Chosen. */
const SOURCE_FROM = 0.7
const FLOOR_BELOW = 0.2
/** Median of |z| of a normal. */
const MEDIAN_ABSOLUTE_Z = 0.6745

/** How far levels scatter round a fit, learnt from its residuals. */
export class NoiseLearnt {
  private readonly floor: number[] = []
  private readonly source: number[] = []

  /** @param sourceShare Of the cell's power that sources have. @param isTold Whether an air-off clip tells its floor. */
  note(residualDb: number, sourceShare: number, isTold: boolean): void {
    if (sourceShare > SOURCE_FROM) this.source.push(Math.abs(residualDb))
    else if (sourceShare < FLOOR_BELOW && !isTold) this.floor.push(Math.abs(residualDb))
  }

  noise(floor: FloorHabit): Noise {
    return {
      floorSdDb: learntSd(this.floor, EXPECTED_NOISE.floorSdDb),
      sourceSdDb: learntSd(this.source, EXPECTED_NOISE.sourceSdDb),
      floor,
    }
  }
}

function learntSd(absolute: readonly number[], expectedDb: number): number {
  const n = absolute.length
  const seen = n === 0 ? 0 : (LEARNING.spent * median(absolute)) / MEDIAN_ABSOLUTE_Z
  const variance = (n * seen * seen + LEARNING.before * expectedDb * expectedDb) / (n + LEARNING.before)
  return Math.min(LEARNING.most, Math.max(LEARNING.least, Math.sqrt(variance)))
}
