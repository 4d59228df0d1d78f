import type { Problem } from '../base/problem'
import type { Line } from '../line/line'
import type { Verdict } from '../locate/answer'
import type { SweepRow } from '../sweep/sweep'
import type { CautionStep } from './cautions'
import type { Complaint } from './complaint'
import type { Digging } from './digging'
import type { Found } from './found'
import type { KeptAnswer } from './keptAnswer'
import type { KeptApart } from './keptApart'
import type { Mend } from './mend'
import type { Opinion } from './opinions'
import type { PlannedPoint } from './plannedPoints'
import type { PressureTest } from './pressureTests'
import type { Recording } from './recording'
import type { Sign } from './signs'
import type { Site } from './site'

/** Goes up by one with every change that an older program could not read; FORMAT.md of this folder tells of each. */
export const JOB_SCHEMA_VERSION = 1

/** The bytes of a clip, kept apart from the job by what they hold. */
export interface KeptSound {
  /** SHA-256 of the bytes as they came, 64 small hexadecimal digits. */
  readonly sha256: string
  readonly bytes: number
}

/** A clip of a sweep: its row, and where its sound is. */
export interface JobClip {
  /** As the sheet tells it; `sweep` is the name of the sweep it stands in. */
  readonly row: SweepRow
  /** `null` when the sheet names a file that was not there. */
  readonly sound: KeptSound | null
  /** What opening had to say of it: missing, too large. */
  readonly problems: readonly Problem[]
  /** How it was recorded here; not there: it was imported. */
  readonly recording?: Recording
}

/** One pass of clips over the points of a line. */
export interface JobSweep {
  readonly id: string
  /** Its name among the sweeps of the line, which are fitted together with a source level each. */
  readonly name: string
  readonly clips: readonly JobClip[]
  /** What is odd in its sheet or in the names of its clips. */
  readonly problems: readonly Problem[]
}

export const CONFIRMATIONS = ['yes', 'no', 'not sure'] as const

/** What a person said after looking at the spectrum and listening. */
export interface Confirmation {
  readonly id: string
  /** Seconds since 1970-01-01 UTC. */
  readonly timeS: number
  readonly says: (typeof CONFIRMATIONS)[number]
  readonly note: string
  /** The answer it was said of; another answer is not confirmed by it. */
  readonly verdict: Verdict
  readonly alongM: number | null
  readonly windowM: readonly [number, number] | null
}

/** A line under test with its sweeps. */
export interface JobLine {
  readonly id: string
  readonly name: string
  readonly line: Line
  /** What was odd in what was told of it when it was opened. */
  readonly problems: readonly Problem[]
  readonly sweeps: readonly JobSweep[]
  /** In order of time. */
  readonly confirmations: readonly Confirmation[]
  /** Points that were laid, by rising number; not there: none. */
  readonly plannedPoints?: readonly PlannedPoint[]
  /** Not there: none. */
  readonly signs?: readonly Sign[]
  /** Clips that were taken out of the sweeps, the last one last, and can be put back; their rows name their sweep. Not there: none. */
  readonly removedClips?: readonly JobClip[]
  /** Not there: `BARE_SITE`. */
  readonly site?: Site
  /** Not there: nothing was said. */
  readonly complaint?: Complaint
  /** In order of time; not there: none. */
  readonly pressureTests?: readonly PressureTest[]
  /** What was found, in order of time; not there: nothing yet. */
  readonly found?: readonly Found[]
  /** Not there: `NO_MEND`. */
  readonly mend?: Mend
  /** The answer as it stood when the job was closed; not there: it was not closed, or there was none. */
  readonly keptAnswer?: KeptAnswer
  /** Not there: `NO_DIGGING`. */
  readonly digging?: Digging
}

/** One visit to one site. Plain data, never changed in place: a change makes a new job that shares what stayed. */
export interface Job {
  readonly id: string
  readonly name: string
  /** Seconds since 1970-01-01 UTC. */
  readonly createdS: number
  readonly changedS: number
  readonly lines: readonly JobLine[]
  /** Steps whose cautions somebody has read and hidden; the report shows them all the same. Not there: none. */
  readonly hiddenCautions?: readonly CautionStep[]
  /** Of other ears, in order of time; not there: none. */
  readonly opinions?: readonly Opinion[]
  /** Where copies of the job differ; not there: nowhere. */
  readonly keptApart?: readonly KeptApart[]
}
