import type { GaugeReading, HoldTest } from './gaugeLog'
import type { RoundedRows } from './roundedFit'

/** Readings of the hold itself, in order of time; those that were left out by hand are not among them. */
export function heldReadings({ readings }: Pick<HoldTest, 'readings'>): GaugeReading[] {
  return readings.filter(({ timeS, leftOut }) => timeS >= 0 && !leftOut).sort((a, b) => a.timeS - b.timeS)
}

export const BEND_SHAPES = ['even', 'early'] as const
export type BendShape = (typeof BEND_SHAPES)[number]

/**
 * A way for the gauge to leave the straight line between its first and last place; 1 where it leaves it most.
 *
 * @param part  Of the hold, 0 to 1.
 * @param shape `even`: a change that goes on all through the hold. `early`: one that dies out in its first eighths, as
 *   water that comes to the ground's temperature, or a fresh pipe that gives.
 */
export function bendAt(part: number, shape: BendShape): number {
  if (shape === 'even') return 4 * part * (1 - part)
  return ((1 - Math.exp(-8 * part)) / (1 - Math.exp(-8)) - part) / EARLY_MOST
}

const EARLY_MOST = 0.6154 // at 0.26 of the hold

/** Columns of the fit: where the needle stood at first, how far it fell over the hold, and how far it bent off. */
export function heldRows(held: readonly GaugeReading[], resolution: number, shape: BendShape | null): RoundedRows {
  const startS = held[0]!.timeS
  const durationS = held.at(-1)!.timeS - startS
  const rows = thinned(
    held.map(({ timeS, value }) => ({ part: (timeS - startS) / durationS, step: value / resolution })),
  )
  const parts = rows.map(({ part }) => part)
  const straight = [Float64Array.from(parts, () => 1), Float64Array.from(parts, (part) => -part)]
  return {
    steps: Float64Array.from(rows, ({ step }) => step),
    counts: Float64Array.from(rows, ({ count }) => count),
    columns: shape === null ? straight : [...straight, Float64Array.from(parts, (part) => bendAt(part, shape))],
  }
}

const MOST_SLOTS = 60 // a sixtieth of the hold is far finer than any bend that is asked about

interface Row {
  part: number
  readonly step: number
  count: number
}

/** Readings of one value in one sixtieth of the hold become one row at their mean time. */
function thinned(readings: readonly { readonly part: number; readonly step: number }[]): Row[] {
  if (readings.length <= MOST_SLOTS) return readings.map((reading) => ({ ...reading, count: 1 }))
  const rows = new Map<string, Row>()
  for (const { part, step } of readings) {
    const slot = `${Math.floor(part * MOST_SLOTS)} ${step}`
    const row = rows.get(slot)
    if (row === undefined) rows.set(slot, { part, step, count: 1 })
    else {
      row.part += (part - row.part) / (row.count + 1)
      row.count++
    }
  }
  return [...rows.values()]
}
