import { KPA_PER, type PressureUnit } from './pressureUnit'

/** One look at the gauge. Kept as it was read, in the gauge's own unit: converted numbers hide a slip of the unit. */
export interface GaugeReading {
  readonly id: string
  /** Seconds since the clock was started, with the supply shut and the needle at rest; negative while it was brought up. */
  readonly timeS: number
  /** As read, in the log's unit. */
  readonly value: number
  readonly note: string
  /** Somebody says that it was mistyped: it stays in the log, and out of the judgement. */
  readonly leftOut: boolean
}

/** A gauge, and what was read on it. Readings stand in the order in which they were made. */
export interface GaugeLog {
  readonly unit: PressureUnit
  /** The step to which the gauge is read, in its unit, > 0. */
  readonly resolution: number
  readonly readings: readonly GaugeReading[]
}

export const FITTING_STATES = ['tight', 'weeping', 'not checked'] as const
export type FittingState = (typeof FITTING_STATES)[number]

export const FITTING_MEANS = ['dye under water', 'soap', 'ear', 'other'] as const
export type FittingMeans = (typeof FITTING_MEANS)[number]

/** A plug or fitting of the test itself, and whether it was looked at: dye under water, soap or ear in air. */
export interface FittingCheck {
  readonly id: string
  readonly name: string
  readonly state: FittingState
  /** `null` when not said. */
  readonly by: FittingMeans | null
}

/** What a hold test has to keep to. The line's maker or the local code decide where they differ from the defaults. */
export interface HoldRules {
  /** The pressure that is asked for, kPa over the air. */
  readonly leastKpa: number
  readonly mostKpa: number
  readonly leastHoldS: number
}

/**
 * Water, 10 to 12 psi (about 70 to 83 kPa), at least 5 minutes, no drop beyond the gauge's resolution: common practice, no
 * source. In the round figures of each unit.
 */
export const DEFAULT_HOLD_RULES: Readonly<Record<PressureUnit, HoldRules>> = {
  psi: { leastKpa: 10 * KPA_PER.psi, mostKpa: 12 * KPA_PER.psi, leastHoldS: 300 },
  kPa: { leastKpa: 70, mostKpa: 83, leastHoldS: 300 },
  bar: { leastKpa: 70, mostKpa: 83, leastHoldS: 300 },
}

/** A hold test of a line or of part of one. */
export interface HoldTest extends GaugeLog {
  readonly rules: HoldRules
  /** `false`: with the supply open the gauge never came to the pressure that was asked for; `null` when not said. */
  readonly cameUp: boolean | null
  /** Of the water or of the pipe, °C, at the start and at the end of the hold; `null` when not measured. */
  readonly startTemperatureC: number | null
  readonly endTemperatureC: number | null
  readonly fittings: readonly FittingCheck[]
}
