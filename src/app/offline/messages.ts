/** What the page asks of the service worker. */
export type OfflineAsk =
  /** Keep what of this copy is missing, and say how things stand. */
  | 'check'
  /** From now on, serve the newer version. */
  | 'take'

/** Why a copy could not be finished: nothing came, something else came than was built, no room on the device. */
export type OfflineFault = 'not_fetched' | 'other_content' | 'full'

/** What the service worker tells every open page. `newer`: of a version other than the one in use. */
export type OfflineTold =
  | { readonly kind: 'keeping'; readonly newer: boolean; readonly done: number; readonly total: number }
  | { readonly kind: 'failed'; readonly newer: boolean; readonly why: OfflineFault; readonly file: string }
  /** All of it is there. */
  | { readonly kind: 'kept'; readonly newer: boolean }
  /** The newer version is in use now. */
  | { readonly kind: 'taken' }

/** A file of the build, and what its bytes must be. */
export interface OfflineFile {
  /** From the folder of index.html on. */
  readonly path: string
  /** SHA-256, hexadecimal. */
  readonly sha256: string
}
