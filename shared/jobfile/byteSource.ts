/** A file that can be read piece by piece: a Blob in a browser, an opened file on a command line. */
export interface ByteSource {
  readonly size: number
  /** Bytes from `from` (included) to `to` (excluded), both within the file; a copy that belongs to the caller. */
  read(from: number, to: number): Promise<Uint8Array>
}
