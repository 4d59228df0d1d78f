import { decodeText } from '../base/decodeText'
import type { ByteSource } from './byteSource'
import { ZIP_LIMITS } from './zipLimits'
import type { ZipEntry } from './zipListing'

const LOCAL_BYTES = 30
const MOST_NAME = 1000

/**
 * The files at the beginning of a zip that has lost its end: from header to header, as long as a file is whole.
 *
 * Only files whose header tells their size can be found so; ours do.
 */
export async function entriesLeft(source: ByteSource): Promise<ZipEntry[]> {
  const entries: ZipEntry[] = []
  let at = 0
  while (at + LOCAL_BYTES <= source.size && entries.length < ZIP_LIMITS.files) {
    const head = await source.read(at, Math.min(source.size, at + LOCAL_BYTES + MOST_NAME))
    const entry = entryAt(head, at)
    if (entry === null || entry.next > source.size) break
    entries.push(entry.file)
    at = entry.next
  }
  return entries
}

function entryAt(head: Uint8Array, headerAt: number): { readonly file: ZipEntry; readonly next: number } | null {
  const view = new DataView(head.buffer, head.byteOffset, head.byteLength)
  const sizesFollow = (view.getUint16(6, true) & 9) !== 0
  const nameBytes = view.getUint16(26, true)
  if (view.getUint32(0, true) !== 0x04034b50 || sizesFollow || LOCAL_BYTES + nameBytes > head.length) return null
  const packedBytes = view.getUint32(18, true)
  try {
    const file = {
      path: decodeText(head.subarray(LOCAL_BYTES, LOCAL_BYTES + nameBytes), ''),
      method: view.getUint16(8, true),
      crc: view.getUint32(14, true),
      packedBytes,
      bytes: view.getUint32(22, true),
      headerAt,
      trouble: null,
    }
    return { file, next: headerAt + LOCAL_BYTES + nameBytes + view.getUint16(28, true) + packedBytes }
  } catch {
    return null
  }
}
