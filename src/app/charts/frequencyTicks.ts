import type { PassBand } from '../../../shared/listen/passBand'

/** Steps within a decade, the densest first. */
const SERIES = [[1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8], [1, 2, 3, 4, 5, 7], [1, 2, 5], [1, 5], [1]]

const DECADES_HZ = [10, 100, 1000, 10_000]

/**
 * Round frequencies on a logarithmic axis, as many as can be read.
 *
 * @param axisPx Length of the axis. @param leastPx Room that a number needs along it.
 * @returns Hz, rising.
 */
export function frequencyTicks({ lowHz, highHz }: PassBand, axisPx: number, leastPx: number): number[] {
  const perRatio = axisPx / Math.log(highHz / lowHz)
  const isReadable = (steps: readonly number[]) =>
    [...steps, 10].every((step, i) => i === 0 || Math.log(step / steps[i - 1]!) * perRatio >= leastPx)
  const series = SERIES.find(isReadable) ?? [1]
  return DECADES_HZ.flatMap((decade) => series.map((step) => step * decade)).filter((hz) => hz >= lowHz && hz <= highHz)
}

/** As a chart writes a frequency: 500, 2k. */
export function tickText(hz: number): string {
  return hz >= 1000 ? `${Number((hz / 1000).toFixed(2))}k` : String(Math.round(hz))
}
