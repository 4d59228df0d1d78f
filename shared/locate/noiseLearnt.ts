import { median } from '../base/statistics'
import { EXPECTED_SD_DB, type FloorHabit, type Noise } from './fitModel'

/** A few cells before any were seen, the parameters that every setting-down spends, and the least and most, dB. Chosen. */
const LEARNING = { before: 12, spent: 1.25, least: 0.3, most: 3 }
/**
 * A band's own spread beside that of all bands: cells for which all bands' count, the share of each neighbour's cells, the
 * largest misfit that counts in full and the most, dB. Countable bubbles scatter a few bands, and not the others. Chosen.
 */
const OF_BAND = { before: 8, neighbour: 0.5, largest: 8, most: 4 }
/** A cell tells of the source from this share of source on, and of the floor below that one. Chosen. */
const SOURCE_FROM = 0.7
const FLOOR_BELOW = 0.2
/** Median of |z| of a normal. */
const MEDIAN_ABSOLUTE_Z = 0.6745

/** How far levels scatter round a fit, learnt from its residuals band by band. */
export class NoiseLearnt {
  private readonly floor: readonly number[][]
  private readonly source: readonly number[][]

  constructor(bands: number) {
    this.floor = Array.from({ length: bands }, () => [])
    this.source = Array.from({ length: bands }, () => [])
  }

  /** @param sourceShare Of the cell's power that sources have. @param isTold Whether an air-off clip tells its floor. */
  note(band: number, residualDb: number, { sourceShare, isTold }: { sourceShare: number; isTold: boolean }): void {
    if (sourceShare > SOURCE_FROM) this.source[band]!.push(Math.abs(residualDb))
    else if (sourceShare < FLOOR_BELOW && !isTold) this.floor[band]!.push(Math.abs(residualDb))
  }

  noise(floor: FloorHabit): Noise {
    return {
      floorSdDb: sdOfBands(this.floor, EXPECTED_SD_DB.floor),
      sourceSdDb: sdOfBands(this.source, EXPECTED_SD_DB.source),
      floor,
    }
  }
}

/** Spread of each band: its own cells', half of those beside it, and the spread of all as if of a few more. */
function sdOfBands(absolute: readonly (readonly number[])[], expectedDb: number): Float64Array {
  const all = learntSd(absolute.flat(), expectedDb)
  const squares = absolute.map((cells) =>
    cells.reduce((sum, r) => sum + (LEARNING.spent * Math.min(r, OF_BAND.largest)) ** 2, 0),
  )
  const withNeighbours = (of: (band: number) => number | undefined, b: number) =>
    (of(b) ?? 0) + OF_BAND.neighbour * ((of(b - 1) ?? 0) + (of(b + 1) ?? 0))
  return Float64Array.from(absolute, (_, b) => {
    const count = withNeighbours((i) => absolute[i]?.length, b)
    const square = withNeighbours((i) => squares[i], b)
    const variance = (square + OF_BAND.before * all * all) / (count + OF_BAND.before)
    return Math.min(OF_BAND.most, Math.max(LEARNING.least, Math.sqrt(variance)))
  })
}

function learntSd(absolute: readonly number[], expectedDb: number): number {
  const n = absolute.length
  const seen = n === 0 ? 0 : (LEARNING.spent * median(absolute)) / MEDIAN_ABSOLUTE_Z
  const variance = (n * seen * seen + LEARNING.before * expectedDb * expectedDb) / (n + LEARNING.before)
  return Math.min(LEARNING.most, Math.max(LEARNING.least, Math.sqrt(variance)))
}
