import { InputError } from '../base/errors'

/** What a zip says of one of its files. */
export interface ZippedFile {
  /** Plain ASCII with forward slashes. */
  readonly path: string
  readonly crc: number
  /** Bytes as they stand in the zip. */
  readonly packedBytes: number
  /** Bytes unpacked. */
  readonly bytes: number
  readonly deflated: boolean
}

const LOCAL_BYTES = 30
const CENTRAL_BYTES = 46
const END_BYTES = 22

/** 1980-01-01, 0 h: the first day zip can tell. The same files make the same zip at any hour. */
const FIXED_DATE = 0x21

/** Sizes and offsets have 32 bits, the count 16. */
const MOST_BYTES = 0xffffffff
const MOST_FILES = 0xffff

/** Bytes of the whole zip, before any of it is written. @throws {InputError} too much for a zip without extensions. */
export function zipBytes(files: readonly ZippedFile[]): number {
  const total = files.reduce(
    (sum, { path, packedBytes }) => sum + LOCAL_BYTES + CENTRAL_BYTES + 2 * path.length + packedBytes,
    END_BYTES,
  )
  if (files.length >= MOST_FILES) throw new InputError(`${files.length} files; a zip holds at most 65 534`)
  if (total > MOST_BYTES) throw new InputError(`the zip would have ${total} bytes; it may have less than 4 GiB`)
  return total
}

/** What stands before the bytes of a file. */
export function localHeader(file: ZippedFile): Uint8Array {
  const header = new Uint8Array(LOCAL_BYTES + file.path.length)
  const view = new DataView(header.buffer)
  view.setUint32(0, 0x04034b50, true)
  shared(view, 4, file)
  header.set(asciiPath(file.path), LOCAL_BYTES)
  return header
}

/** The list of all files that stands at the end. @see PKWARE APPNOTE 6.3.6, sections 4.3.7, 4.3.12, 4.3.16. [APPNOTE636] */
export function centralDirectory(files: readonly ZippedFile[]): Uint8Array {
  const bytes = files.reduce((sum, { path }) => sum + CENTRAL_BYTES + path.length, 0)
  const directory = new Uint8Array(bytes + END_BYTES)
  const view = new DataView(directory.buffer)
  let at = 0
  let offset = 0
  for (const file of files) {
    view.setUint32(at, 0x02014b50, true)
    view.setUint16(at + 4, 20, true) // made by: 2.0, no system's permissions
    shared(view, at + 6, file)
    view.setUint32(at + 42, offset, true)
    directory.set(asciiPath(file.path), at + CENTRAL_BYTES)
    at += CENTRAL_BYTES + file.path.length
    offset += LOCAL_BYTES + file.path.length + file.packedBytes
  }
  view.setUint32(at, 0x06054b50, true)
  view.setUint16(at + 8, files.length, true)
  view.setUint16(at + 10, files.length, true)
  view.setUint32(at + 12, bytes, true)
  view.setUint32(at + 16, offset, true)
  return directory
}

/** The fields that both headers have, in the same order. */
function shared(view: DataView, at: number, { path, crc, packedBytes, bytes, deflated }: ZippedFile): void {
  view.setUint16(at, 20, true) // version needed
  view.setUint16(at + 4, deflated ? 8 : 0, true)
  view.setUint16(at + 8, FIXED_DATE, true)
  view.setUint32(at + 10, crc, true)
  view.setUint32(at + 14, packedBytes, true)
  view.setUint32(at + 18, bytes, true)
  view.setUint16(at + 22, path.length, true)
}

function asciiPath(path: string): Uint8Array {
  if (!/^[\x21-\x7e]+$/.test(path)) throw new InputError(`the path ${path} is not plain ASCII`)
  return Uint8Array.from(path, (character) => character.charCodeAt(0))
}
