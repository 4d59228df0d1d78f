import { median } from '../base/statistics'
import type { GaugeReading, HoldTest } from './gaugeLog'
import { KPA_PER } from './pressureUnit'

/** Something odd about a reading. It stays in the log; `doubt` keeps the test from a verdict until a person decided. */
export interface ReadingProblem {
  readonly readingId: string
  readonly key: string
  readonly severity: 'doubt' | 'note'
  readonly values: Readonly<Record<string, number | string>>
}

const FULL_VACUUM_KPA = -101.325
/** Chosen: past any test of a small plastic line (ASTM D1785 rates 1 in Schedule 40 at 450 psi, 3.1 MPa). */
const MOST_KPA = 3500
/** kPa in a psi and psi in a bar: the two slips of unit that a test in psi can hold. */
const SLIPS = [KPA_PER.psi, KPA_PER.bar / KPA_PER.psi] as const
const SLIP_SHARE = 0.15 // chosen: a slip lands this near to its factor, and no hold test moves sevenfold between readings

/**
 * What is odd in a gauge log: readings out of order, twice at one time, a gauge that rises, units mixed up, pressures that
 * cannot be, a clock that jumped. Nothing is left out or mended here.
 *
 * @returns In the order of the readings. `values`: `reading` is the number in the log from 1, pressures in kPa.
 */
export function readingProblems(test: HoldTest): ReadingProblem[] {
  const kept = test.readings.filter(({ leftOut }) => !leftOut)
  if (kept.length === 0) return []
  const found = [
    ...kept.flatMap((reading) => impossible(test, reading)),
    ...kept.flatMap((reading, i) => orderProblems(test, reading, kept.slice(0, i))),
    ...unitSlips(test, kept),
    ...rises(test, kept),
    ...jumps(test, kept),
  ]
  const place = new Map(test.readings.map(({ id }, i) => [id, i]))
  return found.sort((a, b) => place.get(a.readingId)! - place.get(b.readingId)!)
}

function problem(
  test: HoldTest,
  reading: GaugeReading,
  key: string,
  severity: ReadingProblem['severity'],
  more: Readonly<Record<string, number | string>> = {},
): ReadingProblem {
  const values = {
    reading: 1 + test.readings.indexOf(reading),
    fine_kpa: reading.value * KPA_PER[test.unit],
    ...more,
  }
  return { readingId: reading.id, key, severity, values }
}

function impossible(test: HoldTest, reading: GaugeReading): ReadingProblem[] {
  const kpa = reading.value * KPA_PER[test.unit]
  if (kpa < FULL_VACUUM_KPA) return [problem(test, reading, 'reading_below_vacuum', 'doubt')]
  if (kpa > MOST_KPA) return [problem(test, reading, 'reading_beyond_pipe', 'doubt')]
  return []
}

function orderProblems(test: HoldTest, reading: GaugeReading, before: readonly GaugeReading[]): ReadingProblem[] {
  const twin = before.find(({ timeS }) => timeS === reading.timeS)
  if (twin !== undefined) {
    const isSame = twin.value === reading.value
    const other = 1 + test.readings.indexOf(twin)
    return [problem(test, reading, 'reading_same_time', isSame ? 'note' : 'doubt', { other })]
  }
  const latest = before.reduce((most, { timeS }) => Math.max(most, timeS), Number.NEGATIVE_INFINITY)
  return reading.timeS < latest ? [problem(test, reading, 'reading_out_of_order', 'note')] : []
}

/** A reading that stands from what is usual, or from what is asked, by the factor between two units. */
function unitSlips(test: HoldTest, kept: readonly GaugeReading[]): ReadingProblem[] {
  const held = kept.filter(({ timeS, value }) => timeS >= 0 && value > 0)
  if (held.length === 0) return []
  const usual = median(held.map(({ value }) => value))
  const isSlip = (ratio: number) => SLIPS.some((factor) => Math.abs(Math.log(ratio / factor)) < SLIP_SHARE)
  const asked = [test.rules.leastKpa, test.rules.mostKpa].map((kpa) => kpa / KPA_PER[test.unit])
  const middle = (asked[0]! + asked[1]!) / 2
  const allSlipped = isSlip(usual / middle) || isSlip(middle / usual)
  return held.flatMap((reading, i) => {
    const last = held[i - 1]
    const nearUsual = Math.abs(Math.log(reading.value / usual)) < 1
    if (!nearUsual && (isSlip(reading.value / usual) || isSlip(usual / reading.value))) {
      // A leak can take the gauge down sevenfold by and by; a slip does it between two readings.
      const steps = [last, held[i + 1]].flatMap((next) => (next === undefined ? [] : [next.value / reading.value]))
      const isSudden = steps.some((ratio) => isSlip(ratio) || isSlip(1 / ratio))
      return isSudden ? [problem(test, reading, 'reading_unit_slip', 'doubt')] : []
    }
    return allSlipped && i === 0 ? [problem(test, reading, 'reading_unit_asked', 'doubt', { unit: test.unit })] : []
  })
}

/** The first reading that stands two steps or more over one before it, with the supply shut. */
function rises(test: HoldTest, kept: readonly GaugeReading[]): ReadingProblem[] {
  const held = inOrder(kept)
  let lowest = Number.POSITIVE_INFINITY
  for (const reading of held) {
    const riseKpa = (reading.value - lowest) * KPA_PER[test.unit]
    if (reading.value - lowest > 1.5 * test.resolution) {
      return [problem(test, reading, 'reading_rises', 'note', { rise_fine_kpa: riseKpa })]
    }
    lowest = Math.min(lowest, reading.value)
  }
  return []
}

/** A gap that is out of all proportion to the others: the clock was set, or nobody was there. */
function jumps(test: HoldTest, kept: readonly GaugeReading[]): ReadingProblem[] {
  const held = inOrder(kept)
  const gapsS = held.slice(1).map(({ timeS }, i) => timeS - held[i]!.timeS)
  if (gapsS.length < 3) return []
  const usualS = median(gapsS)
  const longestS = Math.max(600, 20 * usualS) // chosen: past a pause for a call, short of a clock set by an hour
  return held.slice(1).flatMap((reading, i) => {
    if (gapsS[i]! <= longestS) return []
    return [problem(test, reading, 'reading_clock_jumped', 'doubt', { gap_min: gapsS[i]! / 60 })]
  })
}

function inOrder(kept: readonly GaugeReading[]): GaugeReading[] {
  return kept.filter(({ timeS }) => timeS >= 0).sort((a, b) => a.timeS - b.timeS)
}
