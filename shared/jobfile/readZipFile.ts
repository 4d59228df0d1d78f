import { Inflate } from 'fflate'
import { FormatError } from '../base/errors'
import { printable } from '../base/shown'
import type { ByteSource } from './byteSource'
import { crc32 } from './crc32'
import type { ZipEntry } from './zipListing'

const LOCAL_BYTES = 30
/** Pushed at once into the inflater, which can make 1032 times as much of it before it can be stopped. */
const PIECE_BYTES = 2048

/**
 * Unpacks one file of a zip, and never more of it than its list says.
 *
 * @param name Of the zip, for messages.
 * @throws {FormatError} what the list has against it; a header that tells of another file; a size or a check sum that is
 *   not as told.
 */
export async function readZipFile(source: ByteSource, entry: ZipEntry, name: string): Promise<Uint8Array> {
  const fail = (mend: string) => new FormatError(name, printable(entry.path), mend)
  if (entry.trouble !== null) throw fail(entry.trouble)
  const at = await soundAt(source, entry)
  if (at === null) throw fail('is not where the list says; ask for the file again')
  const packed = await source.read(at, at + entry.packedBytes)
  const bytes = entry.method === 0 ? packed : inflated(packed, entry.bytes)
  if (bytes === null || bytes.length !== entry.bytes || crc32(bytes) !== entry.crc) {
    throw fail('was damaged on its way; ask for the file again')
  }
  return bytes
}

/** Behind its own header, which must tell of the same file; `null` when it does not. */
async function soundAt(source: ByteSource, entry: ZipEntry): Promise<number | null> {
  if (entry.headerAt + LOCAL_BYTES > source.size) return null
  const head = await source.read(entry.headerAt, entry.headerAt + LOCAL_BYTES)
  const view = new DataView(head.buffer, head.byteOffset, head.byteLength)
  const at = entry.headerAt + LOCAL_BYTES + view.getUint16(26, true) + view.getUint16(28, true)
  const isSame = view.getUint32(0, true) === 0x04034b50 && view.getUint16(8, true) === entry.method
  return isSame && at + entry.packedBytes <= source.size ? at : null
}

function inflated(packed: Uint8Array, mostBytes: number): Uint8Array | null {
  const parts: Uint8Array[] = []
  let count = 0
  const inflate = new Inflate((part) => {
    parts.push(part)
    count += part.length
  })
  try {
    for (let at = 0; at < packed.length; at += PIECE_BYTES) {
      inflate.push(packed.subarray(at, at + PIECE_BYTES), at + PIECE_BYTES >= packed.length)
      if (count > mostBytes) return null
    }
  } catch {
    return null
  }
  const bytes = new Uint8Array(count)
  let at = 0
  for (const part of parts) {
    bytes.set(part, at)
    at += part.length
  }
  return bytes
}
