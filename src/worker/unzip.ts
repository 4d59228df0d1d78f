import { unzipSync } from 'fflate'
import { FormatError } from '../../shared/base/errors'
import { printable } from '../../shared/base/shown'
import { safePath } from '../../shared/sweep/safePath'
import type { UnzippedFile } from './protocol'

// Chosen: a sweep of a hundred points with minutes at each, and small enough for a phone.
const MOST_ZIP_BYTES = 1e9
const MOST_FILES = 5000
const MOST_FILE_BYTES = 600e6
const MOST_TOTAL_BYTES = 2e9
/** Deflate cannot shrink anything by more than 1032 : 1; sound and sheets stay far below this. Chosen. */
const MOST_RATIO = 200

/**
 * Unpacks a zip that nobody vouches for, one file after another.
 *
 * Names, counts and sizes are looked at before anything is inflated. Files whose names leave the folder are refused;
 * folders, and what packing programs add for themselves, are left out.
 *
 * @param hand Gets each file; its bytes are its own.
 * @throws {FormatError} no zip, damaged, too large, or hostile.
 */
export async function unzip(zip: Blob, name: string, hand: (file: UnzippedFile) => void): Promise<void> {
  const shownName = printable(name)
  if (zip.size > MOST_ZIP_BYTES) {
    throw new FormatError(shownName, '', `is larger than ${MOST_ZIP_BYTES / 1e6} MB; unpack it and open the folder`)
  }
  const bytes = new Uint8Array(await zip.arrayBuffer())
  for (const path of listed(bytes, shownName)) {
    const [file] = Object.values(inflated(bytes, shownName, (entry) => entry.name === path))
    if (file === undefined) throw new FormatError(shownName, printable(path), 'cannot be unpacked; pack it again')
    hand({ path, bytes: file.slice().buffer })
  }
}

/** Names of the files worth unpacking, after every entry was looked at. */
function listed(bytes: Uint8Array, name: string): string[] {
  const paths = new Set<string>()
  let totalBytes = 0
  let count = 0
  inflated(bytes, name, (entry) => {
    count++
    totalBytes += entry.originalSize
    if (count > MOST_FILES) throw new FormatError(name, '', `holds more than ${MOST_FILES} files; pack fewer`)
    if (totalBytes > MOST_TOTAL_BYTES) {
      throw new FormatError(name, '', `unpacks to more than ${MOST_TOTAL_BYTES / 1e6} MB; pack fewer files`)
    }
    if (isLeftOut(entry.name)) return false
    check(entry, name)
    if (paths.has(entry.name)) throw new FormatError(name, printable(entry.name), 'stands in it twice; pack it again')
    paths.add(entry.name)
    return false
  })
  return [...paths]
}

function check(entry: { name: string; size: number; originalSize: number }, name: string): void {
  const place = printable(entry.name)
  const path = safePath(entry.name)
  if (!path.ok) throw new FormatError(name, place, path.mend)
  if (entry.originalSize > MOST_FILE_BYTES) {
    throw new FormatError(name, place, `is larger than ${MOST_FILE_BYTES / 1e6} MB; leave it out`)
  }
  if (entry.originalSize > MOST_RATIO * Math.max(entry.size, 1000)) {
    throw new FormatError(name, place, 'unpacks to far more than any sound or sheet; leave it out')
  }
  // Packed, nothing grows by more than a few bytes: a larger entry is a bomb that lies about what it unpacks to.
  if (entry.size > 1.01 * entry.originalSize + 1000) {
    throw new FormatError(name, place, 'lies about its size; pack the folder again')
  }
}

const isLeftOut = (path: string) =>
  path.endsWith('/') || /(?:^|\/)(?:__MACOSX|\.(?!\.(?:\/|$))[^/]*|Thumbs\.db)(?:\/|$)/.test(path)

function inflated(
  bytes: Uint8Array,
  name: string,
  filter: (entry: { name: string; size: number; originalSize: number }) => boolean,
): Record<string, Uint8Array> {
  try {
    return unzipSync(bytes, { filter })
  } catch (error) {
    if (error instanceof FormatError) throw error
    throw new FormatError(name, '', 'is no zip, or a damaged one; pack the folder again')
  }
}
