/** A file as a zip's list has it, not yet looked into. */
export interface ZipEntry {
  /** As it stands there; `safePath` has passed it when there is no trouble. */
  readonly path: string
  readonly method: number
  readonly crc: number
  readonly packedBytes: number
  readonly bytes: number
  /** Where its own header stands. */
  readonly headerAt: number
  /** Why it is not unpacked, as the mend of a message; `null` when it may be. */
  readonly trouble: string | null
}

export interface ZipListing {
  /** In the order of the list; folders left out. */
  readonly entries: readonly ZipEntry[]
  /** True when the zip has lost its end, and the list was put together from what is left. */
  readonly brokenOff: boolean
}
