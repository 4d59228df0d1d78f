import type { SketchPlace } from '../line/line'

/** How far a fixed mark is from a place on the line, by tape. */
export interface MarkTape {
  /** The place on the line it was taped from, m along. */
  readonly alongM: number
  readonly distanceM: number
}

/**
 * Something that stays where it is while the ground is open (a corner of the house, a post), from which the place to dig is taped.
 */
export interface DigMark {
  readonly id: string
  readonly name: string
  /** On the sketch. Worked out again from the tapes where there are two. */
  readonly place: SketchPlace
  /** Two tapes to the line; `null`: it was put on the sketch by hand, which is no closer than the sketch. */
  readonly tapes: readonly [MarkTape, MarkTape] | null
}

/** What is planned of opening the ground. */
export interface Digging {
  /** At most two. */
  readonly marks: readonly DigMark[]
  /** Of a way round a slab, m; `null`: not thought of. */
  readonly roundM: number | null
  /** Of that way, any currency. */
  readonly roundCostPerM: number | null
}

export const NO_DIGGING: Digging = { marks: [], roundM: null, roundCostPerM: null }

export const MOST_MARKS = 2
export const MOST_MARK_NAME = 100
