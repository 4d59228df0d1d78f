import type { Clip } from '../../audio/clip'
import type { StandingOut } from '../../evidence/bandsOverFloor'
import type { ClipEvidence } from '../../evidence/evidence'
import type { HoldTest } from '../../pressure/gaugeLog'

export const DRILLS = ['leak', 'nearer', 'what', 'place', 'gauge'] as const
/** Leak or not; which of two is nearer; what is this; place it on a line of points by ear; read the gauge. */
export type Drill = (typeof DRILLS)[number]

export const SOUND_KINDS = ['bubbling', 'footstep', 'pump', 'wind', 'rain', 'voice'] as const
export type SoundKind = (typeof SOUND_KINDS)[number]

export const GAUGE_KINDS = ['tight', 'leak', 'weeping plug', 'warming', 'trapped air'] as const
export type GaugeKind = (typeof GAUGE_KINDS)[number]

/** Points of the line in the drill of placing. */
export const PLACE_POINTS = 7

/** A place within this of the true one is right, spacings. Chosen: the right peg, or halfway to the next. */
export const RIGHT_WITHIN_SPACINGS = 0.5

/** What can be answered; `null` where a place on the line of points is asked, as a number from 1 to `PLACE_POINTS`. */
export const OPTIONS = {
  leak: ['leak', 'no leak'],
  nearer: ['A', 'B'],
  what: SOUND_KINDS,
  place: null,
  gauge: GAUGE_KINDS,
} as const satisfies Record<Drill, readonly string[] | null>

/** Share that guessing gets right. */
export const GUESS: Readonly<Record<Drill, number>> = {
  leak: 1 / 2,
  nearer: 1 / 2,
  what: 1 / SOUND_KINDS.length,
  // A guess at any point of the line is within half a spacing either side of the leak.
  place: (2 * RIGHT_WITHIN_SPACINGS) / (PLACE_POINTS - 1),
  gauge: 1 / GAUGE_KINDS.length,
}

/** What is to be asked: the same order makes the same question, sample for sample. */
export interface QuestionOrder {
  readonly drill: Drill
  readonly seed: string
  /** Signal over noise, dB: in the best one-third-octave band of the clip; for a gauge over one step of it. */
  readonly levelDb: number
}

/** One clip of a question, and the same without what sounds in it. */
export interface QuestionClip {
  /** As it is called in the question: a letter or a number of a point; empty when there is only one. */
  readonly name: string
  readonly clip: Clip
  /** The same moment in the same place without the source; `null` when nobody has it. */
  readonly without: Clip | null
  readonly evidence: ClipEvidence
  /** Where it stands over `without`. */
  readonly telling: readonly StandingOut[]
}

/** A hold test to be read. */
export interface GaugeScene {
  readonly test: HoldTest
  /** What a line of this size loses in pressure when so much is let out, full of water; and what this one lost, kPa. */
  readonly letOutMl: number
  readonly fullLineKpa: number
  readonly thisLineKpa: number
}

/** What the machine made of the very same clips. */
export interface MachineSaid {
  readonly said: string
  readonly right: boolean
  /** Bubbling of the clip, 0 to 1, as the benches print it; `null` where it is asked something else. */
  readonly bubbling: number | null
  /** From its place to the true one, spacings; `null` where no place is asked or it names none. */
  readonly errorSpacings: number | null
}

export interface Question {
  readonly order: QuestionOrder
  /** One of `OPTIONS`, or the leak's place among the points. */
  readonly truth: string
  readonly clips: readonly QuestionClip[]
  readonly gauge: GaugeScene | null
  readonly machine: MachineSaid | null
}
