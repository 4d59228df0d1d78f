/** Processing of a microphone's sound, by the words of the sheet. [MediaCapture] in shared/base/sources.ts */
export const PROCESSING = ['echo', 'noise', 'gain'] as const
export type Processing = (typeof PROCESSING)[number]

/** `stopped` by hand, microphone `unplugged`, page `hidden`, app `killed`, storage `full`. */
export const EARLY_ENDS = ['stopped', 'unplugged', 'hidden', 'killed', 'full'] as const
export type EarlyEnd = (typeof EARLY_ENDS)[number]

/** What a phone said against a clip that it recorded. */
export interface PhoneAccount {
  /** What was asked off and stayed on: echo cancellation, noise suppression, gain control. */
  readonly processing: readonly Processing[]
  /** Rate of the microphone or of the clip, Hz, the lower one; `null` when it was not told. */
  readonly deviceHz: number | null
  /** Why the clip is shorter than it was to be; `null` when it is whole. */
  readonly endedBy: EarlyEnd | null
}

export const NOTHING_AGAINST: PhoneAccount = { processing: [], deviceHz: null, endedBy: null }
