import type { SoundKind } from '../drills/question'

export const CONSENTS = ['given', 'own', 'invented', 'not told'] as const
/** Whether whoever the site belongs to agreed that others learn from it; `own`: it is the recorder's; `invented`: nobody's. */
export type Consent = (typeof CONSENTS)[number]

export type ClipLabel = 'leak' | 'no leak' | SoundKind

/** A labelled clip, with where it comes from. */
export interface LibraryClip {
  readonly file: string
  readonly label: ClipLabel
  /** In words: the job and what was found, the folder, the synthetic yard. */
  readonly source: string
  readonly consent: Consent
  /** As told; empty for not told. */
  readonly licence: string
  readonly invented: boolean
  readonly job: string
  /** Where the clip was made and where the leak was found, m along; `null` for not told. */
  readonly alongM: number | null
  readonly leakAtM: number | null
  /** Empty for not told. */
  readonly cover: string
  readonly device: string
}

/** True for a clip that may be handed on. */
export function mayBeShared({ consent, licence }: Pick<LibraryClip, 'consent' | 'licence'>): boolean {
  return consent !== 'not told' && licence.trim() !== ''
}
