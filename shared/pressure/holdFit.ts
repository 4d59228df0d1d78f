import { InputError } from '../base/errors'
import type { HoldTest } from './gaugeLog'
import { BEND_SHAPES, type BendShape, bendAt, heldReadings, heldRows } from './heldReadings'
import { KPA_PER } from './pressureUnit'
import { type RoundedFit, roundedFit } from './roundedFit'

/** A number with the bounds that hold it with 95 %. */
export interface Bounded {
  readonly value: number
  readonly low: number
  readonly high: number
}

/** The curve of the gauge at one time, kPa, with the band that holds the needle with 95 %. */
export interface BandPoint {
  readonly timeS: number
  readonly kpa: number
  readonly lowKpa: number
  readonly highKpa: number
}

/** What a line through the readings says, the gauge's rounding taken into account. */
export interface HoldFit {
  /** From the first to the last reading of the hold, s. */
  readonly durationS: number
  readonly readingCount: number
  /** Mean of the fitted start, kPa. */
  readonly startKpa: number
  /** Fall over the hold, kPa; below 0 for a rise. */
  readonly fallKpa: Bounded
  /** The same for each minute. */
  readonly fallKpaPerMin: Bounded
  /** How far the middle lies off the straight line from start to end; `null` with too few readings to say. */
  readonly bendKpa: Bounded | null
  readonly bendShape: BendShape | null
  readonly band: readonly BandPoint[]
}

/** The fits themselves, in steps of the gauge, for the judge. */
export interface StepFits {
  readonly straight: RoundedFit
  /** One for each shape; empty with fewer than `LEAST_FOR_BEND` readings. */
  readonly bent: readonly { readonly shape: BendShape; readonly fit: RoundedFit }[]
}

export const LEAST_FOR_BEND = 5

/**
 * Fits the readings of a hold, straight and with bends.
 *
 * @returns `null` with fewer than three readings, or when all are of one moment.
 * @throws {InputError} a resolution that is not above 0.
 */
export function stepFits(test: HoldTest): StepFits | null {
  if (!(test.resolution > 0)) throw new InputError(`resolution is ${test.resolution}; must be > 0`)
  const held = heldReadings(test)
  const times = new Set(held.map(({ timeS }) => timeS))
  if (held.length < 3 || times.size < 3) return null
  const straight = roundedFit(heldRows(held, test.resolution, null))
  if (times.size < LEAST_FOR_BEND) return { straight, bent: [] }
  return {
    straight,
    bent: BEND_SHAPES.map((shape) => ({ shape, fit: roundedFit(heldRows(held, test.resolution, shape)) })),
  }
}

/** The chance that coefficients (fall, bend; in steps) are such, by what the readings say. */
export function chanceOf(fit: RoundedFit, isSuch: (fall: number, bend: number) => boolean): number {
  const [, falls, bends] = fit.coefficients
  let chance = 0
  for (let i = 0; i < fit.weights.length; i++) if (isSuch(falls![i]!, bends?.[i] ?? 0)) chance += fit.weights[i]!
  return Math.min(1, chance)
}

/** What the fits say, in kilopascals. The bent fit is told where a bend is seen, the straight one elsewhere. */
export function holdFit(test: HoldTest, fits: StepFits): HoldFit {
  const held = heldReadings(test)
  const stepKpa = test.resolution * KPA_PER[test.unit]
  const startS = held[0]!.timeS
  const durationS = held.at(-1)!.timeS - startS
  const bent = mostBent(fits)
  const isBent = bent !== null && chanceOf(bent.fit, (_, bend) => Math.abs(bend) > 0.25) > 0.95
  const fit = isBent ? bent.fit : fits.straight
  const fallKpa = bounded(fit, 1, stepKpa)
  const perMin = 60 / durationS
  return {
    durationS,
    readingCount: held.length,
    startKpa: fit.mean[0]! * stepKpa,
    fallKpa,
    fallKpaPerMin: { value: fallKpa.value * perMin, low: fallKpa.low * perMin, high: fallKpa.high * perMin },
    bendKpa: bent === null ? null : bounded(bent.fit, 2, stepKpa),
    bendShape: isBent ? bent.shape : null,
    band: BAND_PARTS.map((part) => bandPoint(fit, part, isBent ? bent.shape : null, stepKpa)).map((point, i) => ({
      timeS: startS + BAND_PARTS[i]! * durationS,
      ...point,
    })),
  }
}

const BAND_PARTS = Array.from({ length: 25 }, (_, i) => i / 24)

/** Of the shapes the one whose bend stands out most from its uncertainty. */
export function mostBent({ bent }: StepFits): StepFits['bent'][number] | null {
  const standing = ({ fit }: StepFits['bent'][number]) => Math.abs(fit.mean[2]!) / Math.sqrt(fit.covariance[8]!)
  return bent.reduce<StepFits['bent'][number] | null>(
    (best, each) => (best === null || standing(each) > standing(best) ? each : best),
    null,
  )
}

/** Mean and central 95 % of a coefficient. */
function bounded(fit: RoundedFit, index: number, stepKpa: number): Bounded {
  const values = fit.coefficients[index]!
  return {
    value: fit.mean[index]! * stepKpa,
    low: weighedQuantile(values, fit.weights, 0.025) * stepKpa,
    high: weighedQuantile(values, fit.weights, 0.975) * stepKpa,
  }
}

/**
 * Quantile of places with weights, between the two middles of weight that it falls between.
 *
 * @param probability 0 to 1.
 */
export function weighedQuantile(values: Float64Array, weights: Float64Array, probability: number): number {
  const order = Array.from(values, (_, i) => i).sort((a, b) => values[a]! - values[b]!)
  let below = 0
  let lastMiddle = 0
  let last = values[order[0]!]!
  for (const i of order) {
    const middle = below + weights[i]! / 2
    if (middle >= probability) {
      const share = middle === lastMiddle ? 1 : (probability - lastMiddle) / (middle - lastMiddle)
      return last + Math.min(1, Math.max(0, share)) * (values[i]! - last)
    }
    below += weights[i]!
    lastMiddle = middle
    last = values[i]!
  }
  return last
}

function bandPoint(fit: RoundedFit, part: number, shape: BendShape | null, stepKpa: number): Omit<BandPoint, 'timeS'> {
  const columns = shape === null ? [1, -part] : [1, -part, bendAt(part, shape)]
  let value = 0
  let variance = 0
  for (const [j, a] of columns.entries()) {
    value += a * fit.mean[j]!
    for (const [k, b] of columns.entries()) variance += a * b * fit.covariance[j * columns.length + k]!
  }
  const reach = 1.96 * Math.sqrt(variance)
  return { kpa: value * stepKpa, lowKpa: (value - reach) * stepKpa, highKpa: (value + reach) * stepKpa }
}
