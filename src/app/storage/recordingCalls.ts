import type { AssembledRecording } from './assembleRecording'
import type { KeptRecording } from './database'

/** What the page asks of the worker that keeps recordings. */
export type RecordingCall =
  /** Chunks come by this port from now on. */
  | { readonly kind: 'listen'; readonly port: MessagePort }
  | { readonly kind: 'assemble'; readonly recording: Pick<KeptRecording, 'id' | 'about'> }
  | { readonly kind: 'forget'; readonly id: string }

/** What comes back: of chunks as they are durable, of calls when they are done. */
export type RecordingReply =
  | { readonly kind: 'durable'; readonly id: string; readonly isLast: boolean }
  /** A chunk could not be kept. What came before it is there. */
  | { readonly kind: 'lost'; readonly id: string; readonly full: boolean; readonly isLast: boolean }
  | { readonly kind: 'assembled'; readonly id: string; readonly assembled: AssembledRecording | null }
  | { readonly kind: 'forgotten'; readonly id: string }
  | { readonly kind: 'failed'; readonly id: string; readonly full: boolean; readonly why: string }
