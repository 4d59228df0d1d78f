import type { Problem } from '../base/problem'
import type { Detected } from '../evidence/detected'
import type { ClipEvidence } from '../evidence/evidence'
import type { SketchPlace } from '../line/line'
import type { SweepRow } from '../sweep/sweep'

export type Verdict = 'located' | 'unsure' | 'no leak heard'

/** Why the answer is what it is, as a key of shared/words and the values of its sentence; the strongest first. */
export interface Reason {
  readonly key: string
  readonly values: Readonly<Record<string, number | string>>
}

/** A clip with its row in the sheet and what it says; `null` evidence when it was missing or unreadable. */
export interface Sounding {
  readonly row: SweepRow
  readonly evidence: ClipEvidence | null
  /** Problems beyond the evidence's own: file missing, unreadable. */
  readonly problems: readonly Problem[]
  /** What an installed detector says of it; left out or `null` where none was asked. */
  readonly detected?: Detected | null
}

/** A place the sound comes from. */
export interface Source {
  /** Posterior median. */
  readonly alongM: number
  /** Shortest single interval that holds `windowProbability` of this source's own density, m along. */
  readonly windowM: readonly [number, number]
  readonly windowProbability: number
  /** That there is this source at all, 0 to 1. */
  readonly probability: number
  readonly place: SketchPlace
  /** The tape: so far past one point toward another. */
  readonly tape: Reason
}

export interface PointAnswer {
  readonly point: number
  readonly alongM: number
  readonly rank: number
  /** That the leak is nearer to this point than to any other, 0 to 1. */
  readonly nearestProbability: number
  readonly evidence: PointEvidence
  readonly problems: readonly Problem[]
}

/** What the clips of one point say together. */
export interface PointEvidence {
  /** Mean power of the usable air-on clips, 100 Hz to 3 kHz, dBFS. */
  readonly levelDbFs: number | null
  /** The most that any band from 100 Hz to 3 kHz stands over the floor, dB. */
  readonly overFloorDb: number | null
  readonly bestBandHz: number | null
  readonly ringRatePerS: number | null
  readonly medianPitchHz: number | null
  readonly bubbling: number | null
  readonly clipsUsed: number
}

export interface LocateAnswer {
  readonly verdict: Verdict
  readonly reasons: readonly Reason[]
  readonly sources: readonly Source[]
  readonly points: readonly PointAnswer[]
  readonly clips: readonly { readonly file: string; readonly used: boolean; readonly problems: readonly Problem[] }[]
  /** Sum of the sources' densities: expected number of leaks a metre. */
  readonly density: { readonly alongM: readonly number[]; readonly perM: readonly number[] }
  readonly listenNext: readonly {
    readonly alongM: number
    readonly offsetM: number
    readonly expectedWindowM: number
  }[]
  readonly digFirst: readonly {
    readonly fromM: number
    readonly toM: number
    readonly probability: number
    readonly cost: number | null
  }[]
  /** What a detector added to the answer; `null` where none was asked. */
  readonly detector?: DetectorPart | null
}

/** How much a detector weighed. */
export interface DetectorPart {
  /** How much better what it said fits the likeliest place than no leak anywhere, nepers. */
  readonly supportNepers: number
  /** Clips that it spoke of, and the mean of what it may weigh there, 0 to 1. */
  readonly clips: number
  readonly meanTrust: number
  /** Clips of a device, or on a cover, that it never heard. */
  readonly newDevices: number
  readonly newCovers: number
}
