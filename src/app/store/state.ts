import type { HeardClip } from '../../../shared/evidence/heardClip'
import type { Job, JobLine } from '../../../shared/job/job'
import type { JobStage } from '../../../shared/job/jobStage'
import type { DetectorModel } from '../../../shared/learn/model'
import type { LocateAnswer } from '../../../shared/locate/answer'
import type { ListenWay } from '../../../shared/record/slot'
import type { Contact } from '../../../shared/sweep/sweep'
import type { Keyed } from '../../../shared/words/sentence'
import type { ShownUnits } from '../../../shared/words/shownUnits'
import type { WordKey } from '../../../shared/words/words'
import type { Joining } from '../join/joining'
import type { NewerVersion, OfflineState } from '../offline/offlineState'
import type { Review } from './review'

/** Everything the page shows is worked out from this. Plain data, never changed in place. */
export interface AppState {
  /** The open job: saved, undoable. */
  readonly job: Job | null
  /** Steps back, the last one last; and steps forward again, the next one last. */
  readonly undo: readonly UndoStep[]
  readonly redo: readonly UndoStep[]
  readonly session: Session
  readonly device: Device
}

/** A job before a change, and what the change was called. */
export interface UndoStep {
  readonly job: Job
  readonly words: WordKey
  /** A following change with the same key is part of this step; `null` when the step is closed. */
  readonly mergeKey: string | null
}

/** Gone with the page. */
export interface Session {
  /** The line on show, of the open job. */
  readonly lineId: string | null
  /** Jobs in storage, the last changed first; `null` until they were read. */
  readonly jobs: readonly JobSummary[] | null
  /** Deleted jobs that can be put back, the last deleted first. */
  readonly deletedJobs: readonly DeletedJob[]
  readonly saving: Saving
  /** Another tab has the jobs open: nothing is changed here. */
  readonly readOnly: boolean
  /** Another tab has asked for the jobs: what is under way is ended and saved for it. */
  readonly handingOver: boolean
  /** A clip is being made, or on its way into its job. */
  readonly recording: boolean
  /** What is being opened; one at a time. */
  readonly opening: Opening | null
  /** Clips of a recorder that wait for their points. */
  readonly joining: Joining | null
  /** Evidence by the digest of the sound. */
  readonly heard: Readonly<Record<string, HeardClip>>
  /** Answers by the id of their line. */
  readonly answers: Readonly<Record<string, LineAnswer>>
  readonly working: Working | null
  /** Lines whose working-out was cancelled. */
  readonly halted: readonly string[]
  readonly chosenPoint: number | null
  /** By line: points whose spectrum was looked at, and points of which a clip was played. */
  readonly examined: Readonly<
    Record<string, { readonly looked: readonly number[]; readonly played: readonly number[] }>
  >
  /** How far hearing somebody else's lines has come, by job and line. */
  readonly reviews: Readonly<Record<string, Review>>
  readonly notices: readonly Notice[]
  /** The copy of the page that works without a signal, and whether a newer version waits for a yes. */
  readonly offline: OfflineState
  readonly newerVersion: NewerVersion
  /** The browser offers to put the page on the home screen. */
  readonly canInstall: boolean
  /** Recordings that a killed page left behind, the oldest first. */
  readonly left: readonly LeftRecording[]
  /** What was installed to be asked beside levels and rings; `null`: none. */
  readonly detector: DetectorModel | null
}

export interface LeftRecording {
  readonly id: string
  readonly jobId: string
  readonly point: number
  readonly air: 'on' | 'off'
  /** When it began, s since 1970. */
  readonly timeS: number
  readonly lengthS: number
}

export interface JobSummary {
  readonly id: string
  readonly name: string
  readonly changedS: number
  /** `null` for a job without a line. */
  readonly firstLineId: string | null
  readonly lineCount: number
  readonly pointCount: number
  /** Not there in jobs that an older version kept, until it is worked out. */
  readonly stage?: JobStage
  readonly opinionCount?: number
}

/** `deletedS`: when it was deleted, s since 1970. */
export type DeletedJob = JobSummary & { readonly deletedS: number }

export type Saving =
  | { readonly state: 'saved' | 'waiting' | 'saving' }
  /** `full`: the device has no room left. */
  | { readonly state: 'failed'; readonly full: boolean }

export type Opening =
  | {
      readonly stage: 'fetching' | 'unpacking' | 'reading' | 'keeping'
      readonly name: string
      readonly done: number
      /** 0 while it is not known. */
      readonly total: number
    }
  /** Numbered clips without a sheet: the user has to say how far apart the points are. */
  | {
      readonly stage: 'asking'
      readonly name: string
      readonly clipCount: number
      readonly points: readonly number[]
      readonly leftOut: readonly string[]
    }

export interface Working {
  readonly lineId: string
  readonly stage: 'listening' | 'locating'
  readonly done: number
  readonly total: number
}

/** An answer, and what it was worked out from: it is current as long as those are the line's own. */
export interface LineAnswer {
  readonly answer: LocateAnswer
  readonly line: JobLine['line']
  readonly sweeps: JobLine['sweeps']
  readonly detector: DetectorModel | null
}

/** Something to be told, at the place it belongs. */
export interface Notice {
  readonly id: number
  readonly place: NoticePlace
  readonly severity: 'wrong' | 'odd' | 'good'
  readonly words: Keyed
}

export type NoticePlace =
  | 'page'
  | 'jobs'
  | 'line'
  | 'pressure'
  | 'place'
  | 'listen'
  | 'mend'
  | 'report'
  | 'join'
  | 'second ear'

/** Kept on this device, for all jobs. */
export interface Device {
  readonly units: ShownUnits
  readonly look: 'auto' | 'light' | 'dark'
  readonly listen: ListenSettings
}

/** How clips are recorded. */
export interface ListenSettings {
  /** Of a clip, s. */
  readonly lengthS: number
  readonly way: ListenWay
  readonly contact: Contact | null
  /** As the browser calls it; `null` for whichever it takes. */
  readonly deviceId: string | null
  /** The next point's number is said aloud. */
  readonly speak: boolean
  /** Hooking up was read, or tested. */
  readonly hookedUp: boolean
}

/** Shortest and longest clip, s. Chosen: a try, and more than any rhythm of a leak. */
export const CLIP_LENGTH_S = { least: 2, most: 60 } as const

export const FIRST_STATE: AppState = {
  job: null,
  undo: [],
  redo: [],
  session: {
    lineId: null,
    jobs: null,
    deletedJobs: [],
    saving: { state: 'saved' },
    readOnly: false,
    handingOver: false,
    recording: false,
    opening: null,
    joining: null,
    heard: {},
    answers: {},
    working: null,
    halted: [],
    chosenPoint: null,
    examined: {},
    reviews: {},
    notices: [],
    offline: { stage: 'asking' },
    newerVersion: 'none',
    canInstall: false,
    left: [],
    detector: null,
  },
  device: {
    units: { length: 'm', pressure: 'kPa' },
    look: 'auto',
    listen: { lengthS: 10, way: 'both', contact: null, deviceId: null, speak: false, hookedUp: false },
  },
}
