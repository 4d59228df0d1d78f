import { InputError } from '../base/errors'

export const ADHESIVES = ['two-part wet', 'solvent cement', 'other'] as const
export type Adhesive = (typeof ADHESIVES)[number]

/** Minutes: how long it can be worked, and how long before it may be put under pressure. */
export interface CureTimes {
  readonly workMin: readonly [number, number] | null
  readonly pressureMin: readonly [number, number]
}

/**
 * What is usual for an adhesive.
 *
 * Two-part adhesives that bond wet: 2 to 3 minutes to work, 15 to 20 before pressure, longer in the cold; common practice,
 * no source. For everything else there is no default: size, temperature and pressure decide, and the maker's table has
 * to be typed in.
 */
export const USUAL_CURE: Readonly<Record<Adhesive, CureTimes | null>> = {
  'two-part wet': { workMin: [2, 3], pressureMin: [15, 20] },
  'solvent cement': null,
  other: null,
}

/** Below this two-part adhesives take longer than usual, °C. Chosen; the maker's sheet decides. */
export const COLD_C = 15

/** Where a joint stands. It never says that it has cured: a left-over dab beside the joint and the maker's sheet do. */
export interface CureStage {
  /** `times missing`: nothing is known, the maker's table has to be typed in first. */
  readonly stage: 'times missing' | 'working' | 'leave alone' | 'may be ready: look' | 'look at the dab'
  /** Until the next stage, s; `null` when there is none. */
  readonly leftS: number | null
  /** Colder than usual times are meant for: expect longer. */
  readonly isCold: boolean
}

/**
 * Where a joint stands at a moment.
 *
 * @param joint `times` as typed, or `null` for what is usual; `startS` and `nowS` on one clock; `temperatureC` `null` when
 *   not told.
 * @returns Before the shorter time: `leave alone`; between the two: `may be ready: look`; after the longer: `look at the dab`.
 * @throws {InputError} times that are negative or turned round; a moment before the start.
 */
export function cureStage(joint: {
  readonly adhesive: Adhesive
  readonly times: CureTimes | null
  readonly startS: number
  readonly nowS: number
  readonly temperatureC: number | null
}): CureStage {
  const passedS = joint.nowS - joint.startS
  if (!(passedS >= 0)) throw new InputError(`nowS lies ${-passedS} s before startS; the clock was set back`)
  const times = joint.times ?? USUAL_CURE[joint.adhesive]
  const isCold = joint.times === null && joint.temperatureC !== null && joint.temperatureC < COLD_C
  if (times === null) return { stage: 'times missing', leftS: null, isCold }
  const [earliestMin, latestMin] = times.pressureMin
  if (!(earliestMin >= 0 && latestMin >= earliestMin)) {
    throw new InputError(`pressureMin is ${earliestMin} to ${latestMin}; the shorter time comes first, from 0 on`)
  }
  const ends = [
    ['working', 60 * (times.workMin?.[1] ?? 0)],
    ['leave alone', 60 * earliestMin],
    ['may be ready: look', 60 * latestMin],
  ] as const
  const now = ends.find(([, endS]) => passedS < endS)
  return now === undefined
    ? { stage: 'look at the dab', leftS: null, isCold }
    : { stage: now[0], leftS: now[1] - passedS, isCold }
}
