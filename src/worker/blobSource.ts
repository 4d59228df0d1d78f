import type { ByteSource } from '../../shared/jobfile/byteSource'

/** A file of a browser, read piece by piece. */
export function blobSource(file: Blob): ByteSource {
  return {
    size: file.size,
    read: async (from, to) => new Uint8Array(await file.slice(from, to).arrayBuffer()),
  }
}
