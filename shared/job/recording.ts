import type { EarlyEnd } from '../sweep/phoneAccount'

/**
 * What the phone said of itself while a clip was recorded: the evidence that levels may be compared, or not. Names and
 * meanings of the settings are those of the W3C; `null` where the browser did not say. [MediaCapture] in
 * shared/base/sources.ts
 */
export interface Recording {
  /** Name of the microphone as the browser gives it; empty where it gives none. */
  readonly device: string
  /** Rate of the samples in the clip, Hz. */
  readonly sampleRateHz: number
  /** Channels that came from the microphone; the clip keeps one of them when they were all the same. */
  readonly channelCount: number
  /** Bits a sample of the clip: 16 or 24 whole-numbered, 32 floating. The samples that came are kept without loss. */
  readonly keptBits: 16 | 24 | 32
  readonly settings: MicrophoneSettings
  /** How long it was to be, s. */
  readonly wantedS: number
  /** Why it is shorter than wanted; `null` when it is whole. */
  readonly endedBy: EarlyEnd | null
}

/** Read back from the track after these were all asked off: `echoCancellation`, `noiseSuppression`, `autoGainControl`. */
export interface MicrophoneSettings {
  readonly echoCancellation: boolean | null
  readonly noiseSuppression: boolean | null
  readonly autoGainControl: boolean | null
  /** Of the device, Hz; the browser may turn it into another before the clip. */
  readonly sampleRateHz: number | null
  readonly sampleSizeBits: number | null
  readonly channelCount: number | null
}
