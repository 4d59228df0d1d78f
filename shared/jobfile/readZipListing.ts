import { decodeText } from '../base/decodeText'
import { FormatError } from '../base/errors'
import { safePath } from '../sweep/safePath'
import type { ByteSource } from './byteSource'
import { entriesLeft } from './entriesLeft'
import { ZIP_LIMITS } from './zipLimits'
import type { ZipEntry, ZipListing } from './zipListing'

const END_BYTES = 22
const CENTRAL_BYTES = 46
const MOST_COMMENT = 0xffff

/**
 * The list of a zip that nobody vouches for: nothing is unpacked, and nothing is allocated by a number from it.
 *
 * A zip that breaks off is read from its beginning, as far as whole files go.
 *
 * @param name For messages.
 * @throws {FormatError} no zip; too many or too much; files that overlap, as bombs do; a list that cannot be right.
 * @see PKWARE APPNOTE 6.3.6, section 4.3. [APPNOTE636]
 */
export async function readZipListing(source: ByteSource, name: string): Promise<ZipListing> {
  const tailAt = Math.max(0, source.size - END_BYTES - MOST_COMMENT)
  const tail = await source.read(tailAt, source.size)
  const endAt = endRecordAt(tail)
  if (endAt === null) {
    const left = await entriesLeft(source)
    if (left.length === 0) throw new FormatError(name, '', 'is no zip, or only its first bytes; ask for the file again')
    return { entries: checked(left, name), brokenOff: true }
  }
  const view = viewOf(tail)
  const count = view.getUint16(endAt + 10, true)
  const bytes = view.getUint32(endAt + 12, true)
  const at = view.getUint32(endAt + 16, true)
  if (count > ZIP_LIMITS.files || bytes > ZIP_LIMITS.directoryBytes) {
    throw new FormatError(name, '', `holds more than ${ZIP_LIMITS.files} files; no job does`)
  }
  if (at + bytes !== tailAt + endAt) throw damaged(name)
  const entries = listed(await source.read(at, at + bytes), count, name)
  refuseOverlaps(entries, at, name)
  return { entries: checked(entries, name), brokenOff: false }
}

/** Where the end record stands: its comment must reach to the very end of the file. */
function endRecordAt(tail: Uint8Array): number | null {
  const view = viewOf(tail)
  for (let at = tail.length - END_BYTES; at >= 0; at--) {
    if (view.getUint32(at, true) === 0x06054b50 && at + END_BYTES + view.getUint16(at + 20, true) === tail.length) {
      return at
    }
  }
  return null
}

function listed(directory: Uint8Array, count: number, name: string): ZipEntry[] {
  const view = viewOf(directory)
  const entries: ZipEntry[] = []
  let at = 0
  for (let i = 0; i < count; i++) {
    if (at + CENTRAL_BYTES > directory.length || view.getUint32(at, true) !== 0x02014b50) throw damaged(name)
    const nameBytes = view.getUint16(at + 28, true)
    const end = at + CENTRAL_BYTES + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true)
    if (end > directory.length) throw damaged(name)
    entries.push({
      path: pathOf(directory.subarray(at + CENTRAL_BYTES, at + CENTRAL_BYTES + nameBytes)),
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packedBytes: view.getUint32(at + 20, true),
      bytes: view.getUint32(at + 24, true),
      headerAt: view.getUint32(at + 42, true),
      trouble: view.getUint16(at + 8, true) & 1 ? 'is locked with a password; pack it again without' : null,
    })
    at = end
  }
  if (at !== directory.length) throw damaged(name)
  return entries
}

/** UTF-8 where it is that; else each byte as a character, which is what it was for plain ASCII and shows it otherwise. */
export function pathOf(bytes: Uint8Array): string {
  try {
    return decodeText(bytes, '')
  } catch {
    return String.fromCharCode(...bytes)
  }
}

/** Files that lie over one another unpack to far more than the zip holds. */
function refuseOverlaps(entries: readonly ZipEntry[], directoryAt: number, name: string): void {
  const inOrder = [...entries].sort((a, b) => a.headerAt - b.headerAt)
  for (const [i, { headerAt, packedBytes, path }] of inOrder.entries()) {
    const next = inOrder[i + 1]?.headerAt ?? directoryAt
    if (headerAt + 30 + path.length + packedBytes > next) {
      throw new FormatError(name, '', 'holds files that lie over one another; it is damaged or made to do harm')
    }
  }
}

function checked(entries: readonly ZipEntry[], name: string): ZipEntry[] {
  const files = entries.filter(({ path }) => !path.endsWith('/'))
  const total = files.reduce((sum, { bytes }) => sum + bytes, 0)
  if (total > ZIP_LIMITS.totalBytes && files.every((file) => troubleOf(file) === null)) {
    throw new FormatError(name, '', `unpacks to more than ${ZIP_LIMITS.totalBytes / 1e6} MB; no job does`)
  }
  const counts = new Map<string, number>()
  for (const { path } of files) counts.set(path, (counts.get(path) ?? 0) + 1)
  return files.map((file) => {
    const twice = counts.get(file.path)! > 1 ? 'stands in it twice; ask for the file again' : null
    return { ...file, trouble: file.trouble ?? twice ?? troubleOf(file) }
  })
}

function troubleOf({ path, method, packedBytes, bytes }: ZipEntry): string | null {
  const safe = safePath(path)
  if (!safe.ok) return safe.mend
  if (safe.path !== path) return 'is no plain path; pack it again'
  if (method !== 0 && method !== 8) return 'is packed in a way that is not read; pack it again as a plain zip'
  if (method === 0 && packedBytes !== bytes) return 'lies about its size; ask for the file again'
  const most = method === 0 ? ZIP_LIMITS.fileBytes : ZIP_LIMITS.deflatedBytes
  if (bytes > most) return `is larger than ${most / 1e6} MB unpacked; no part of a job is`
  if (bytes > ZIP_LIMITS.ratio * Math.max(packedBytes, 1000)) return 'unpacks to far more than any part of a job'
  // Packed, nothing grows by more than a few bytes: a larger entry is a bomb that lies about what it unpacks to.
  if (packedBytes > 1.01 * bytes + 1000) return 'lies about its size; ask for the file again'
  return null
}

function damaged(name: string): FormatError {
  return new FormatError(name, '', 'is a damaged zip; ask for the file again')
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
}
