/** The declaration of every bag of ours. @see RFC 8493, section 2.1.1. [RFC8493] */
export const BAG_DECLARATION = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n'

export const MANIFEST = 'manifest-sha256.txt'
export const TAG_MANIFEST = 'tagmanifest-sha256.txt'

/** A file of the bag and the SHA-256 of its bytes, 64 small hexadecimal digits. */
export interface BagFile {
  readonly path: string
  readonly sha256: string
}

/**
 * A manifest: a line a file, the digest first. `sha256sum -c` reads it.
 *
 * @see RFC 8493, sections 2.1.3 and 2.2.1: line ends and per cent signs in names are written as `%0A`, `%0D`, `%25`. [RFC8493]
 */
export function manifestText(files: readonly BagFile[]): string {
  return files.map(({ path, sha256 }) => `${sha256}  ${encodedPath(path)}\n`).join('')
}

function encodedPath(path: string): string {
  return path.replace(/[%\r\n]/g, (odd) => `%${odd.charCodeAt(0).toString(16).toUpperCase().padStart(2, '0')}`)
}

/** `bag-info.txt`: a line a label. Values hold no line ends. @see RFC 8493, section 2.2.2. [RFC8493] */
export function bagInfoText(labels: readonly (readonly [label: string, value: string])[]): string {
  return labels.map(([label, value]) => `${label}: ${value}\n`).join('')
}
