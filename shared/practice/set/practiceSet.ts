import type { LibraryClip } from '../library/libraryClip'

export const SET_DRILLS = ['leak', 'what'] as const
export type SetDrill = (typeof SET_DRILLS)[number]

/** A clip of a set: its bytes as WAV, and those of the same without its source where somebody has them. */
export interface SetClip extends LibraryClip {
  readonly wav: Uint8Array
  readonly without: Uint8Array | null
}

/** A row of labelled clips that a trainer hands to others. */
export interface PracticeSet {
  /** SHA-256 of its manifest, by which scores find their set. */
  readonly id: string
  readonly name: string
  readonly drill: SetDrill
  readonly clips: readonly SetClip[]
}

/** One answer to a clip of a set, by its number from 0 on. */
export interface SetAnswer {
  readonly clip: number
  readonly said: string
}

/** Chosen: an evening's worth; and what a phone can send. */
export const SET_LIMITS = { clips: 200, name: 100, clipBytes: 20e6, scores: 1000 } as const
