import type { PassBand } from '../../../shared/listen/passBand'

/** Steps within a decade, the densest first. */
const SERIES = [[1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8], [1, 2, 3, 4, 5, 7], [1, 2, 5], [1, 5], [1]]

const DECADES_HZ = [10, 100, 1000, 10_000]

/**
 * Round frequencies on a logarithmic axis, as many as can be read.
 *
 * @param axisPx Length of the axis.
 * @param roomPx What a written number needs along it, its distance from the next one included.
 * @returns Hz, rising.
 */
export function frequencyTicks(
  { lowHz, highHz }: PassBand,
  axisPx: number,
  roomPx: (text: string) => number,
): number[] {
  const perRatio = axisPx / Math.log(highHz / lowHz)
  const ticksOf = (steps: readonly number[]) =>
    DECADES_HZ.flatMap((decade) => steps.map((step) => step * decade)).filter((hz) => hz >= lowHz && hz <= highHz)
  const isReadable = (ticks: readonly number[]) =>
    ticks.every((hz, i) => {
      const before = ticks[i - 1]
      if (before === undefined) return true
      return Math.log(hz / before) * perRatio >= (roomPx(tickText(hz)) + roomPx(tickText(before))) / 2
    })
  return SERIES.map(ticksOf).find(isReadable) ?? ticksOf([1])
}

/** As a chart writes a frequency: 500, 2k. */
export function tickText(hz: number): string {
  return hz >= 1000 ? `${Number((hz / 1000).toFixed(2))}k` : String(Math.round(hz))
}
