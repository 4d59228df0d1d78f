/**
 * The frequency grid every law of the yard is evaluated on: three frequencies to each exact one-third-octave band
 * (base ten, IEC 61260-1), from the 25 Hz band to the 16 kHz band. Spectra of the yard are power per hertz on this grid.
 */
const LOWEST_BAND = -16
const HIGHEST_BAND = 12
const CELLS_PER_BAND = 3

export const GRID_COUNT = (HIGHEST_BAND - LOWEST_BAND + 1) * CELLS_PER_BAND

/** Grid frequencies, Hz, rising by 1/30 decade; the middle one of each three is a band's exact mid frequency. */
export const GRID_HZ: Float64Array = Float64Array.from({ length: GRID_COUNT }, (_, g) => cellHz(g))

/** Width of the cell round each grid frequency, Hz; the cells leave no gaps. */
export const CELL_WIDTH_HZ: Float64Array = Float64Array.from(
  { length: GRID_COUNT },
  (_, g) => cellHz(g + 0.5) - cellHz(g - 0.5),
)

function cellHz(cell: number): number {
  return 1000 * 10 ** ((LOWEST_BAND * CELLS_PER_BAND - 1 + cell) / 30)
}

/** Lower edge of a cell, Hz; `cellEdgeHz(GRID_COUNT)` is the grid's upper end. */
export function cellEdgeHz(cell: number): number {
  return cellHz(cell - 0.5)
}

/** Place of a frequency on the grid, in cells (0 is the first grid frequency); not held within the grid. */
export function gridPlace(frequencyHz: number): number {
  return 30 * Math.log10(frequencyHz / 1000) - LOWEST_BAND * CELLS_PER_BAND + 1
}

/** A band of the evidence and where its three cells lie. */
export interface GridBand {
  readonly midHz: number
  readonly firstCell: number
  readonly widthHz: number
}

/** The bands evidence speaks of: 63 Hz to 6.3 kHz, 21 of them. */
export const EVIDENCE_BANDS: readonly GridBand[] = Array.from({ length: 21 }, (_, b) => gridBand(b - 12))

/** The bands that may carry the best signal over the floor: 100 Hz to 3.15 kHz. */
export const SIGNAL_BANDS: readonly GridBand[] = Array.from({ length: 16 }, (_, b) => gridBand(b - 10))

function gridBand(index: number): GridBand {
  const firstCell = (index - LOWEST_BAND) * CELLS_PER_BAND
  return {
    midHz: 1000 * 10 ** (index / 10),
    firstCell,
    widthHz: cellEdgeHz(firstCell + CELLS_PER_BAND) - cellEdgeHz(firstCell),
  }
}

/** Power in a band: power per hertz times cell width, summed over the band's cells. */
export function bandPower(psd: Float64Array, band: GridBand): number {
  let power = 0
  for (let g = band.firstCell; g < band.firstCell + CELLS_PER_BAND; g++) power += psd[g]! * CELL_WIDTH_HZ[g]!
  return power
}

/** A spectrum on the grid from a law of frequency. */
export function onGrid(law: (frequencyHz: number) => number): Float64Array {
  return Float64Array.from(GRID_HZ, law)
}

/** Total power of a spectrum on the grid. */
export function totalPower(psd: Float64Array): number {
  let power = 0
  for (let g = 0; g < GRID_COUNT; g++) power += psd[g]! * CELL_WIDTH_HZ[g]!
  return power
}

/** The cell nearest to a frequency, held within the grid. */
export function nearestCell(frequencyHz: number): number {
  return Math.min(Math.max(Math.round(gridPlace(frequencyHz)), 0), GRID_COUNT - 1)
}
