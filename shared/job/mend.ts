import { ADHESIVES, type CureTimes } from '../pressure/cureTimes'

/** A part of the line that is shut off and tested by itself. */
export interface MendPart {
  readonly id: string
  readonly name: string
  readonly fromM: number
  readonly toM: number
  /** Ids of its pressure tests, in the order in which they were begun. The last one counts. */
  readonly testIds: readonly string[]
}

/** A step of the repair, in the words of whoever does it. */
export interface MendStep {
  readonly id: string
  readonly text: string
  readonly done: boolean
}

/** A joint that was made. A closed app finds here since when. */
export interface Joint {
  readonly adhesive: (typeof ADHESIVES)[number]
  /** `null`: what is usual for the adhesive; otherwise the maker's table as typed. */
  readonly times: CureTimes | null
  readonly temperatureC: number | null
  /** Seconds since 1970-01-01 UTC; `null`: not made yet. */
  readonly startS: number | null
}

/** The repair of a line: cut, parts, steps, joint. */
export interface Mend {
  /** Where the line was cut, m along; `null`: not cut. */
  readonly cutAtM: number | null
  readonly parts: readonly MendPart[]
  readonly steps: readonly MendStep[]
  readonly joint: Joint
  /** When the job was closed; `null`: it is not. */
  readonly closedS: number | null
}

export const NO_MEND: Mend = {
  cutAtM: null,
  parts: [],
  steps: [],
  joint: { adhesive: ADHESIVES[0], times: null, temperatureC: null, startS: null },
  closedS: null,
}

export const MOST_PARTS = 50
export const MOST_STEPS = 200
export const MOST_STEP_TEXT = 500
export const MOST_PART_NAME = 200
