import { FormatError } from '../base/errors'
import { printable, shown } from '../base/shown'
import { safePath } from '../sweep/safePath'
import type { BagFile } from './bagTexts'

/**
 * Checks the declaration of a bag.
 *
 * @param text Of `bagit.txt`.
 * @throws {FormatError} no declaration; a byte order mark; another encoding; a version after 1.x.
 * @see RFC 8493, section 2.1.1: two lines, UTF-8, no byte order mark. [RFC8493]
 */
export function checkDeclaration(text: string, name: string): void {
  const found = /^BagIt-Version: (\d+)\.(\d+)[ \t]*(?:\r\n|\r|\n)Tag-File-Character-Encoding: (\S+)\s*$/.exec(text)
  if (found === null)
    throw new FormatError(name, 'bagit.txt', 'does not say that this is a bag; ask for the file again')
  const [, major, minor, encoding] = found
  if (Number(major) > 1 || (Number(major) === 0 && Number(minor) < 93)) {
    throw new FormatError(name, 'bagit.txt', `is of BagIt ${major}.${minor}; versions 0.93 to 1 are read`)
  }
  if (encoding!.toUpperCase() !== 'UTF-8') {
    throw new FormatError(name, 'bagit.txt', `says that its texts are ${shown(encoding)}; UTF-8 is read`)
  }
}

/** A manifest as far as it can be read. */
export interface ReadManifest {
  readonly files: readonly BagFile[]
  /** Rows that are no line of a manifest, counted from 1. */
  readonly oddRows: readonly number[]
}

/**
 * @param isWanted Whether a path may stand in this manifest: payload in one, everything else in the other.
 * @see RFC 8493, section 2.1.3: digits of any case; spaces or tabs, and the asterisk of `sha256sum`, before the path; `./`
 *   before it; `%0A`, `%0D` and `%25` in it; each file once; none outside the bag. [RFC8493]
 */
export function readManifest(text: string, isWanted: (path: string) => boolean): ReadManifest {
  const files = new Map<string, string>()
  const oddRows: number[] = []
  for (const [i, line] of text.split(/\r\n|\r|\n/).entries()) {
    if (line === '') continue
    const found = /^([0-9a-f]{64})[ \t]+\*?(?:\.\/)?(.+)$/i.exec(line)
    const path = found?.[2]?.replace(/%(0A|0D|25)/gi, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    const digest = found?.[1]?.toLowerCase()
    const isOdd = path === undefined || !stays(path) || !isWanted(path) || (files.get(path) ?? digest) !== digest
    if (isOdd) oddRows.push(i + 1)
    else files.set(path, digest!)
  }
  return { files: [...files].map(([path, sha256]) => ({ path, sha256 })), oddRows }
}

/** Line ends may stand in names here, though no zip of ours has any. */
function stays(path: string): boolean {
  return safePath(path.replace(/[\r\n]/g, '_')).ok
}

/**
 * The labels of `bag-info.txt`; of a label that stands twice the last.
 *
 * @see RFC 8493, section 2.2.2: label, colon, value; a line that begins with a space continues the one before. [RFC8493]
 */
export function readBagInfo(text: string): ReadonlyMap<string, string> {
  const labels = new Map<string, string>()
  let last: string | null = null
  for (const line of text.split(/\r\n|\r|\n/)) {
    if (/^[ \t]/.test(line) && last !== null) {
      labels.set(last, `${labels.get(last)!} ${line.trim()}`)
      continue
    }
    const found = /^([^:]+?)[ \t]*:[ \t]*(.*)$/.exec(line)
    if (found === null) continue
    last = found[1]!.toLowerCase()
    labels.set(last, printable(found[2]!.trim(), 2000))
  }
  return labels
}
