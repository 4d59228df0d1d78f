import type { Tree } from './boostedTrees'
import type { Calibration, CalibrationBin } from './calibration'
import type { LinearOdds } from './logisticRegression'
import type { OperatingPoint } from './operatingPoint'
import type { RocArea } from './rocArea'
import type { Scaling } from './scaling'

/** Version of the model file that this program writes; the first had no trees. */
export const MODEL_VERSION = 2
/** Digits of a clip's SHA-256 that a model keeps. Chosen: two of ten thousand clips are mistaken once in five million models. */
export const HEARD_DIGITS = 12

/** How a detector did on clips whose group it never heard. */
export interface Evaluation {
  /** What was kept apart: jobs, or, harder, devices. */
  readonly keptApart: 'job' | 'device'
  /** Clips that could be scored. */
  readonly clips: number
  readonly area: RocArea
  readonly brier: number
  readonly calibration: readonly CalibrationBin[]
  readonly atMiss: OperatingPoint
  readonly byCover: readonly CoverFigures[]
}

/** The same threshold, cover by cover. */
export interface CoverFigures {
  /** Empty: not told. */
  readonly cover: string
  readonly counts: OperatingPoint
  /** `null` where the cover has one class only. */
  readonly area: RocArea | null
}

/** Where a model comes from and what it is worth, to be read by people. */
export interface ModelCard {
  readonly name: string
  /** Of the data: what was recorded or invented, where, by whom allowed. */
  readonly data: string
  /** ISO 8601, told by the shell. */
  readonly trainedAt: string
  readonly programVersion: string
  readonly leaks: number
  readonly others: number
  readonly jobs: number
  readonly devices: readonly string[]
  readonly covers: readonly string[]
  /** What it cannot do, in sentences. */
  readonly limits: readonly string[]
}

/** A trained detector. */
export interface DetectorModel {
  /** Ids of the features in the order of the weights. */
  readonly features: readonly string[]
  readonly scaling: Scaling
  readonly odds: LinearOdds
  /** Added to them; none for a detector whose odds are linear. */
  readonly trees: readonly Tree[]
  readonly calibration: Calibration
  /** From this probability on it says leak. */
  readonly threshold: number
  /** 99 of 100 training clips lie at most so far from their middle, rms standard deviations a feature. */
  readonly usualDistance: number
  /** Of the linear odds; `null` with trees. */
  readonly penalty: number | null
  /** The first twelve digits of the SHA-256 of every training clip, in order: what it has heard cannot judge it. */
  readonly heard: readonly string[]
  readonly card: ModelCard
  /** By job, and by device where there were several. */
  readonly evaluations: readonly Evaluation[]
}
