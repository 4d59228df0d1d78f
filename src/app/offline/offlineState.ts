import type { OfflineFault } from './messages'

/** How far the copy is that works without a signal. */
export type OfflineState =
  /** Nothing is known yet. */
  | { readonly stage: 'asking' }
  /** The page was not opened securely, or this browser keeps no copies. */
  | { readonly stage: 'unable'; readonly why: 'not_secure' | 'not_known' }
  /** `total` is 0 while it is not known. */
  | { readonly stage: 'keeping'; readonly done: number; readonly total: number }
  | { readonly stage: 'failed'; readonly why: OfflineFault | 'refused'; readonly file: string }
  | { readonly stage: 'kept' }

/** Whether a version other than the one in use is ready, or was taken in another tab. */
export type NewerVersion = 'none' | 'ready' | 'taken'
