/** One labelled clip as the detector learns from it. */
export interface Example {
  /** Its file, or another name that messages show. */
  readonly name: string
  /** SHA-256 of its bytes: a clip counts once. */
  readonly sha256: string
  /** The job it came from; clips of one are never on both sides of a split. */
  readonly job: string
  /** Microphone and recorder, and cover, as told; empty when not. */
  readonly device: string
  readonly cover: string
  readonly isLeak: boolean
  /** `detectorValues` of the clip. */
  readonly values: readonly (number | null)[]
}

/** Fewest clips of either kind, and fewest jobs, from which a detector is trained. Chosen: below, its scores say nothing. */
export const FEWEST = { ofEither: 10, jobs: 3 }
