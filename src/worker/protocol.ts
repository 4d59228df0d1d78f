import type { Clip } from '../../shared/audio/clip'
import type { Problem } from '../../shared/base/problem'
import type { Ring } from '../../shared/bubbles/ring'
import type { HeardClip } from '../../shared/evidence/heardClip'
import type { Job } from '../../shared/job/job'
import type { OpenedJobFile } from '../../shared/jobfile/openJobFile'
import type { ShareChoice } from '../../shared/jobfile/sharedJob'
import type { Line } from '../../shared/line/line'
import type { LocateAnswer } from '../../shared/locate/answer'
import type { LocateInput } from '../../shared/locate/locate'
import type { Question, QuestionOrder } from '../../shared/practice/drills/question'
import type { SetQuestionInput } from '../../shared/practice/set/setQuestion'
import type { Telling } from '../../shared/practice/withoutTelling'
import type { HoldTest } from '../../shared/pressure/gaugeLog'
import type { HoldJudgement } from '../../shared/pressure/judgeHold'
import type { KnownPipe } from '../../shared/pressure/temperatureEffect'
import type { RowOptions, SpectrogramRows } from '../../shared/spectrum/spectrogramRows'
import type { PowerDensity } from '../../shared/spectrum/welch'
import type { SweepRow } from '../../shared/sweep/sweep'

/** A clip as the page has it: the bytes of a WAV file, or what the browser decoded of another kind of file. */
export type Sound = { readonly wav: ArrayBuffer } | { readonly decoded: Clip }

/** Where numbered clips without a sheet lie, as the user told it. */
export interface ToldLayout {
  readonly startM: number
  readonly spacingM: number
}

/** A sweep folder before any clip is opened: the names in it and its two texts. */
export interface FolderTexts {
  /** For messages. */
  readonly folder: string
  /** Paths of all files from the folder on, with forward slashes. */
  readonly paths: readonly string[]
  readonly sheet: ArrayBuffer | null
  readonly line: ArrayBuffer | null
  readonly layout: ToldLayout | null
}

/** What a sweep folder tells; `needsLayout` when there is no sheet and nobody has said how far apart the points are. */
export interface ReadFolder {
  readonly rows: readonly SweepRow[]
  /** `null` when the folder has no line.json. */
  readonly line: Line | null
  readonly sheetProblems: readonly Problem[]
  readonly lineProblems: readonly Problem[]
  readonly needsLayout: boolean
}

/** A file out of a zip. */
export interface UnzippedFile {
  readonly path: string
  readonly bytes: ArrayBuffer
}

/** A file on its way into a zip. */
export interface FileToPack {
  readonly path: string
  readonly bytes: Blob
}

/** A sound or photo out of a job file; a browser may keep its bytes on disk. */
export interface OpenedPart {
  readonly sha256: string
  readonly bytes: Blob
}

/** A job with all that goes into its file. */
export interface JobToPack {
  readonly job: Job
  readonly choice: ShareChoice
  /** Sounds and photos that are on this device, by digest. */
  readonly bytes: ReadonlyMap<string, Blob>
  /** Rings that were found before, by the digest of the sound; the others are found now. */
  readonly rings: ReadonlyMap<string, readonly Ring[]>
}

/** A job file, ready to be handed on. */
export interface PackedJob {
  readonly zip: Blob
  /** Of the folder in it. */
  readonly name: string
  /** Clips whose sound is not here. */
  readonly problems: readonly Problem[]
}

/** Mono samples of a clip's strongest channel, for listening. */
export interface PlainSamples {
  readonly samples: Float32Array
  readonly sampleRateHz: number
}

/** A spectrogram as it is painted, with the middles of its columns. */
export interface SpectrogramPicture extends SpectrogramRows {
  readonly timesS: Float64Array
}

/** Every call the page can make: what goes in, what comes out, and what comes piece by piece before it. */
export interface Calls {
  hear: { in: { sound: Sound }; out: HeardClip; part: never }
  locate: { in: LocateInput; out: LocateAnswer; part: never }
  /** What a detector looks at; `null` for a spoilt clip. */
  measure: { in: { sound: Sound }; out: (number | null)[] | null; part: never }
  /** Power density of a clip by Welch's method; `null` for a clip shorter than a segment. */
  spectrum: { in: { sound: Sound; segmentS: number }; out: PowerDensity | null; part: never }
  spectrogram: {
    in: { sound: Sound; segmentS: number; maxColumns: number; rows: RowOptions }
    out: SpectrogramPicture
    part: never
  }
  samples: { in: { sound: Sound }; out: PlainSamples; part: never }
  judgeHold: { in: { test: HoldTest; pipe: KnownPipe }; out: HoldJudgement; part: never }
  /** A question of a practice, made of the invented yard. */
  practice: { in: QuestionOrder; out: Question; part: never }
  setQuestion: { in: SetQuestionInput; out: Question; part: never }
  /** A clip without the bands and rings that told. */
  withoutTelling: { in: { clip: Clip; telling: Telling }; out: PlainSamples; part: never }
  readFolder: { in: FolderTexts; out: ReadFolder; part: never }
  zip: { in: { files: readonly FileToPack[] }; out: Blob; part: { readonly done: number } }
  unzip: { in: { zip: Blob; name: string }; out: null; part: UnzippedFile }
  /** `null`: a zip, but no bag; it may hold a sweep folder. */
  openJobFile: {
    in: { file: Blob; name: string }
    out: OpenedJobFile | null
    part: OpenedPart | { readonly done: number; readonly total: number }
  }
  packJob: { in: JobToPack; out: PackedJob; part: { readonly done: number; readonly total: number } }
}

export type CallName = keyof Calls

export interface Request<Name extends CallName = CallName> {
  readonly id: number
  readonly name: Name
  readonly input: Calls[Name]['in']
}

/** A wrong file comes back with its message ready to be shown; anything else is a fault of the program. */
export type Reply =
  | { readonly id: number; readonly result: unknown }
  | { readonly id: number; readonly part: unknown }
  | {
      readonly id: number
      readonly wrongFile: { readonly file: string; readonly place: string; readonly mend: string }
    }
  | { readonly id: number; readonly fault: string }
