import { InputError } from '../base/errors'
import { quantile } from '../base/statistics'
import { SPECTROGRAM_FLOOR_DB_PER_HZ, type Spectrogram } from './spectrogram'

/** A spectrogram on a logarithmic frequency axis, ready to be painted. */
export interface SpectrogramRows {
  readonly columnCount: number
  readonly rowCount: number
  /** 0 (at or below `fromDbPerHz`) to 255 (at or above `toDbPerHz`), row by row, the highest frequency first. */
  readonly shades: Uint8Array
  readonly fromDbPerHz: number
  readonly toDbPerHz: number
}

export interface RowOptions {
  readonly lowHz: number
  readonly highHz: number
  readonly rowCount: number
  /**
   * Lift of the levels toward high frequencies, dB an octave about 1 kHz; 0 when left out. The ground hums low, and
   * a few dB an octave keep that from filling the picture.
   */
  readonly tiltDbPerOctave?: number
  /** Levels of the palest and the darkest shade; told from the picture itself when left out. */
  readonly rangeDbPerHz?: readonly [number, number]
}

/** Between the palest and the darkest shade at least, dB, so that plain noise does not look like something. */
const LEAST_RANGE_DB = 30

/**
 * Lays a spectrogram out in rows of equal ratio and turns its levels into shades.
 *
 * A row that holds several bins takes the loudest, so that a thin ring does not vanish; a row between two bins takes the
 * nearest. Rows above the highest bin stay at 0. Without a told range the palest shade is the median level and the
 * darkest the one that 1 in 500 passes.
 *
 * @throws {InputError} limits that do not rise from above 0; a row count below 1.
 */
export function spectrogramRows(picture: Spectrogram, options: RowOptions): SpectrogramRows {
  const { lowHz, highHz, rowCount, tiltDbPerOctave = 0 } = options
  if (!(lowHz > 0 && highHz > lowHz))
    throw new InputError(`limits are ${lowHz} to ${highHz} Hz; must rise from above 0`)
  if (!(rowCount >= 1)) throw new InputError(`rowCount is ${rowCount}; must be 1 or more`)
  const columnCount = picture.timesS.length
  const levels = new Float32Array(columnCount * rowCount).fill(SPECTROGRAM_FLOOR_DB_PER_HZ)
  const step = (highHz / lowHz) ** (1 / rowCount)
  for (let row = 0; row < rowCount; row++) {
    const bottomBin = highHz / step ** (row + 1) / picture.binWidthHz
    const topBin = highHz / step ** row / picture.binWidthHz
    const nearest = Math.max(1, Math.round((bottomBin + topBin) / 2))
    const first = Math.min(Math.ceil(bottomBin), nearest)
    const last = Math.max(Math.floor(topBin), nearest)
    const liftDb = tiltDbPerOctave * Math.log2((nearest * picture.binWidthHz) / 1000)
    if (last < picture.binCount) loudest(picture, { first, last, liftDb }, levels.subarray(row * columnCount))
  }
  const [fromDbPerHz, toDbPerHz] = options.rangeDbPerHz ?? rangeOf(levels)
  const scale = 255 / (toDbPerHz - fromDbPerHz)
  const shades = Uint8Array.from(levels, (level) => Math.min(255, Math.max(0, (level - fromDbPerHz) * scale)))
  return { columnCount, rowCount, shades, fromDbPerHz, toDbPerHz }
}

interface RowBins {
  readonly first: number
  readonly last: number
  readonly liftDb: number
}

function loudest(picture: Spectrogram, { first, last, liftDb }: RowBins, row: Float32Array): void {
  const { timesS, binCount, levelsDbPerHz } = picture
  for (let column = 0; column < timesS.length; column++) {
    let most = SPECTROGRAM_FLOOR_DB_PER_HZ
    for (let k = first; k <= last; k++) most = Math.max(most, levelsDbPerHz[column * binCount + k]!)
    if (most > SPECTROGRAM_FLOOR_DB_PER_HZ) row[column] = most + liftDb
  }
}

function rangeOf(levels: Float32Array): [number, number] {
  const told = levels.filter((level) => level > SPECTROGRAM_FLOOR_DB_PER_HZ)
  if (told.length === 0) return [SPECTROGRAM_FLOOR_DB_PER_HZ, SPECTROGRAM_FLOOR_DB_PER_HZ + LEAST_RANGE_DB]
  const from = quantile(told, 0.5)
  return [from, Math.max(from + LEAST_RANGE_DB, quantile(told, 0.998))]
}
