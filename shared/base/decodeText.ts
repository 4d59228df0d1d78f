import { FormatError } from './errors'

/**
 * Bytes of a text file as text: UTF-8, strictly, with or without a byte order mark.
 *
 * Written out here because `TextDecoder` belongs to browsers and Node and not to the language, and because it can say
 * that a byte is wrong but not in which row, nor that the file is UTF-16 as a spreadsheet's "Unicode text" is.
 *
 * @param bytes    The whole file.
 * @param fileName For messages.
 * @returns The text without its byte order mark.
 * @throws {FormatError} UTF-16; a NUL; a byte that is not UTF-8 (as in Latin-1), with its row; over-long forms,
 *   surrogates and code points past U+10FFFF are not UTF-8 either.
 * @see IETF RFC 3629, UTF-8, section 4. [RFC3629] in sources.ts
 */
export function decodeText(bytes: Uint8Array, fileName: string): string {
  const [first, second] = bytes
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    throw new FormatError(fileName, '', 'the text is UTF-16; save it again as UTF-8')
  }
  const pieces: string[] = []
  let units: number[] = []
  let at = first === 0xef && second === 0xbb && bytes[2] === 0xbf ? 3 : 0
  while (at < bytes.length) {
    const length = sequenceLength(bytes, at)
    if (length === 0) fail(bytes, at, fileName)
    units.push(codePoint(bytes, at, length))
    at += length
    if (units.length === PIECE) {
      pieces.push(String.fromCodePoint(...units))
      units = []
    }
  }
  pieces.push(String.fromCodePoint(...units))
  return pieces.join('')
}

const PIECE = 4096 // chosen: small enough to be handed over as arguments

/** Bytes of the well-formed sequence that starts here; 0 when none does. The table of RFC 3629, section 4. */
function sequenceLength(bytes: Uint8Array, at: number): number {
  const lead = bytes[at]!
  if (lead < 0x80) return lead === 0 ? 0 : 1
  const tail = (index: number, low = 0x80, high = 0xbf) => {
    const byte = bytes[at + index]
    return byte !== undefined && byte >= low && byte <= high
  }
  if (lead >= 0xc2 && lead <= 0xdf) return tail(1) ? 2 : 0
  if (lead >= 0xe0 && lead <= 0xef) {
    return tail(1, lead === 0xe0 ? 0xa0 : 0x80, lead === 0xed ? 0x9f : 0xbf) && tail(2) ? 3 : 0
  }
  if (lead >= 0xf0 && lead <= 0xf4) {
    return tail(1, lead === 0xf0 ? 0x90 : 0x80, lead === 0xf4 ? 0x8f : 0xbf) && tail(2) && tail(3) ? 4 : 0
  }
  return 0
}

function codePoint(bytes: Uint8Array, at: number, length: number): number {
  let point = length === 1 ? bytes[at]! : bytes[at]! & (0x7f >> length)
  for (let i = 1; i < length; i++) point = (point << 6) | (bytes[at + i]! & 0x3f)
  return point
}

function fail(bytes: Uint8Array, at: number, fileName: string): never {
  let row = 1
  for (let i = 0; i < at; i++) if (bytes[i] === 0x0a) row++
  const byte = bytes[at]!
  if (byte === 0) throw new FormatError(fileName, `row ${row}`, 'there is a NUL byte; this is no text file in UTF-8')
  const hex = byte.toString(16).toUpperCase()
  throw new FormatError(fileName, `row ${row}`, `the byte ${hex} is not UTF-8; save the file again as UTF-8`)
}
