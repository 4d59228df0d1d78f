import { DEFAULT_HOLD_RULES, type HoldTest } from '../pressure/gaugeLog'
import type { BandPoint, Bounded } from '../pressure/holdFit'
import type { HoldVerdict } from '../pressure/holdVerdicts'
import type { DropOf, HoldReason } from '../pressure/judgeHold'
import type { PressureUnit } from '../pressure/pressureUnit'

/** What the judge said beside the verdict. */
export interface KeptJudgement {
  readonly reasons: readonly HoldReason[]
  readonly dropOf: DropOf | null
  /** `null` where no line could be fitted. */
  readonly fallKpaPerMin: Bounded | null
  /** The curve with its band; empty where no line could be fitted. */
  readonly band: readonly BandPoint[]
}

/** A verdict as it was when somebody closed the test, with the version that gave it. It is never worked out anew. */
export interface KeptVerdict {
  readonly timeS: number
  readonly verdict: HoldVerdict
  readonly version: string
  /** Not there in jobs of older versions. */
  readonly judged?: KeptJudgement
}

/** A pressure test of the line or of a part of it. */
export interface PressureTest extends HoldTest {
  readonly id: string
  /** What was tested: the whole line, a side of the cut; may be empty. */
  readonly name: string
  /** Seconds since 1970-01-01 UTC. */
  readonly createdS: number
  /** When the clock of its readings was started; `null`: not yet, or the times were typed in. A closed app finds it here. */
  readonly clockStartS: number | null
  /** Of the part that was tested, m; `null`: the whole line. */
  readonly lengthM: number | null
  /** `null` until it is closed. */
  readonly kept: KeptVerdict | null
}

export const MOST_TESTS = 500
export const MOST_READINGS = 5000
export const MOST_FITTINGS = 100
export const MOST_BAND = 1000
export const MOST_HOLD_REASONS = 200
export const DROP_OF = ['line', 'weeping fitting', 'fittings not checked'] as const satisfies readonly DropOf[]

/** The step a gauge is read to until somebody says otherwise. Chosen: what the test's usual pressure is read to. */
export const FIRST_RESOLUTION: Readonly<Record<PressureUnit, number>> = { psi: 0.1, kPa: 1, bar: 0.01 }

/** A test that nobody has begun. */
export function freshPressureTest(
  told: Pick<PressureTest, 'id' | 'createdS' | 'unit'> & Partial<PressureTest>,
): PressureTest {
  return {
    name: '',
    resolution: FIRST_RESOLUTION[told.unit],
    readings: [],
    rules: DEFAULT_HOLD_RULES[told.unit],
    cameUp: null,
    startTemperatureC: null,
    endTemperatureC: null,
    fittings: [],
    clockStartS: null,
    lengthM: null,
    kept: null,
    ...told,
  }
}
