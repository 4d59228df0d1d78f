import type { PassBand } from '../../../shared/listen/passBand'

const ONES = [1, 2, 5]
const FINE = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8]

/** Round frequencies on a logarithmic axis, few enough to be read, Hz in rising order. */
export function frequencyTicks({ lowHz, highHz }: PassBand): number[] {
  const series = highHz / lowHz > 12 ? ONES : FINE
  const decades = [10, 100, 1000, 10_000]
  return decades.flatMap((decade) => series.map((step) => step * decade)).filter((hz) => hz >= lowHz && hz <= highHz)
}

/** As a chart writes a frequency: 500, 2k. */
export function tickText(hz: number): string {
  return hz >= 1000 ? `${Number((hz / 1000).toFixed(2))}k` : String(Math.round(hz))
}
