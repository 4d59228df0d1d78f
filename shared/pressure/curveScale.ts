/** What the curve has to hold; values in the gauge's unit. */
export interface CurveExtent {
  readonly readings: readonly { readonly timeS: number; readonly value: number }[]
  readonly band: readonly { readonly low: number; readonly high: number }[]
  readonly resolution: number
  readonly leastHoldS: number
  readonly widthPx: number
  readonly heightPx: number
}

export interface CurveScale {
  readonly x: (timeS: number) => number
  readonly y: (value: number) => number
  /** Labelled times, whole minutes, s; and labelled values, whole steps of `valueStep`. */
  readonly times: readonly number[]
  readonly values: readonly number[]
  readonly valueStep: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/**
 * Scales of the gauge's curve. It never magnifies less than six steps of the gauge: a needle that stays should look as if
 * it stayed.
 */
export function curveScale(extent: CurveExtent): CurveScale {
  const { readings, band, resolution, leastHoldS, widthPx, heightPx } = extent
  const lows = [...readings.map(({ value }) => value - resolution), ...band.map(({ low }) => low)]
  const highs = [...readings.map(({ value }) => value + resolution), ...band.map(({ high }) => high)]
  const middle = (Math.min(...lows) + Math.max(...highs)) / 2
  const half = Math.max(3 * resolution, (Math.max(...highs) - Math.min(...lows)) / 2)
  const [low, high] = [middle - half, middle + half]
  const startS = readings[0]!.timeS
  const endS = Math.max(readings.at(-1)!.timeS, startS + leastHoldS)
  const valueStep = roundStep((high - low) / 4, resolution)
  const widest = Math.max(...[low, high].map((value) => Math.abs(value).toFixed(decimals(valueStep)).length))
  const [left, right, top, bottom] = [14 + 9.5 * widest, widthPx - 4, 6, heightPx - 28]
  const minuteStep = [1, 2, 5, 10, 15, 30, 60, 120, 240].find((minutes) => (endS - startS) / 60 / minutes <= 5) ?? 480
  return {
    x: (timeS) => left + ((timeS - startS) / (endS - startS)) * (right - left),
    y: (value) => top + ((high - value) / (high - low)) * (bottom - top),
    times: multiples(startS / 60, endS / 60, minuteStep)
      .map((minutes) => minutes * 60)
      .filter((timeS) => timeS < startS + 0.88 * (endS - startS)), // the unit stands at the end
    values: multiples(low, high, valueStep),
    valueStep,
    left,
    right,
    top,
    bottom,
  }
}

function decimals(step: number): number {
  return /\.(\d+)$/.exec(String(step))?.[1]?.length ?? 0
}

/** The smallest of 1, 2, 5 times a power of ten that is at least this, and at least a step of the gauge. */
function roundStep(least: number, resolution: number): number {
  const power = 10 ** Math.floor(Math.log10(least))
  const step = [1, 2, 5, 10].map((times) => times * power).find((each) => each >= least * (1 - 1e-9))!
  return Number(Math.max(step, resolution).toPrecision(6))
}

function multiples(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step - 1e-9)
  const count = Math.floor(to / step + 1e-9) - first + 1
  return Array.from({ length: Math.max(0, count) }, (_, i) => Number(((first + i) * step).toPrecision(9)))
}
