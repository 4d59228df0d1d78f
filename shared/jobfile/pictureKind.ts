/**
 * What kind of picture a file is, by its first bytes, whatever it is called.
 *
 * @returns Its usual ending; `null` for what is none. Drawings in SVG are none: they can hold programs.
 * @see ITU-T T.81 (JPEG), ISO/IEC 15948 (PNG), RFC 9649 (WebP), ISO/IEC 23008-12 (HEIF), all from memory.
 */
export function pictureKind(bytes: Uint8Array): 'jpg' | 'png' | 'webp' | 'gif' | 'avif' | 'heic' | null {
  const text = (at: number, length: number) => String.fromCharCode(...bytes.subarray(at, at + length))
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpg'
  if (text(0, 8) === '\x89PNG\r\n\x1a\n') return 'png'
  if (text(0, 4) === 'RIFF' && text(8, 4) === 'WEBP') return 'webp'
  if (/^GIF8[79]a$/.test(text(0, 6))) return 'gif'
  if (text(4, 4) !== 'ftyp') return null
  if (/^(?:avif|avis)$/.test(text(8, 4))) return 'avif'
  return /^(?:heic|heix|hevc|mif1|msf1)$/.test(text(8, 4)) ? 'heic' : null
}
