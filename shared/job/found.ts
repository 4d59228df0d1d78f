export const FOUND_WAYS = ['opened', 'by eye', 'by ear'] as const
/** How somebody came to know: the ground was opened, or it was seen or heard without any electronics. */
export type FoundWay = (typeof FOUND_WAYS)[number]

export const FOUND_CAUSES = [
  'root',
  'stone',
  'crushed',
  'joint',
  'fitting',
  'frost',
  'drill or stake',
  'age',
  'other',
  'not seen',
] as const
/** What had let the line leak, as far as somebody saw. */
export type FoundCause = (typeof FOUND_CAUSES)[number]

/** The answer as it stood when something was found: the window is judged by it, and never worked out anew. */
export interface ShownWindow {
  readonly windowM: readonly [number, number]
  /** The chance that was promised, 0 to 1. */
  readonly probability: number
  readonly alongM: number
  readonly verdict: 'located' | 'unsure' | 'no leak heard'
  readonly version: string
}

/** A photo by the digest of its bytes, which are kept apart from the job, as clips are. */
export interface KeptPhoto {
  readonly sha256: string
  readonly bytes: number
}

/** What was found at a place of the line. */
export interface Found {
  readonly id: string
  /** Seconds since 1970-01-01 UTC. */
  readonly timeS: number
  readonly way: FoundWay
  /** Where the damage was, m along; `null`: the window was opened, and there was none in it. */
  readonly alongM: number | null
  readonly cause: FoundCause
  readonly note: string
  readonly photo: KeptPhoto | null
  /** `null`: no place had been named. */
  readonly shown: ShownWindow | null
}

export const MOST_FOUND = 200
export const MOST_FOUND_NOTE = 2000
