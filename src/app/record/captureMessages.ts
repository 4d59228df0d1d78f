/** To the audio thread. */
export type CaptureCommand =
  /** Where chunks go, past the main thread: a busy page cannot hold them up. */
  | { readonly kind: 'sink'; readonly port: MessagePort }
  | { readonly kind: 'record'; readonly id: string; readonly frames: number; readonly chunkFrames: number }
  /** Ends the clip with what there is. */
  | { readonly kind: 'stop' }

/** From the audio thread. */
export type CaptureReport =
  | {
      readonly kind: 'heard'
      /** Frames since the microphone was opened, at the end of the block. */
      readonly endFrame: number
      readonly frames: number
      readonly power: number
      readonly peak: number
      readonly channelCount: number
    }
  | { readonly kind: 'recorded'; readonly frames: number; readonly isWhole: boolean }

/** To whoever makes chunks durable. */
export interface ChunkMessage {
  readonly id: string
  readonly number: number
  readonly channels: readonly Float32Array[]
  /** The clip ends with this one, which may be shorter, or empty. */
  readonly isLast: boolean
}
