/** A sound file that is no WAV and that browsers can decode. */
export interface PackedFormat {
  readonly kind: 'flac' | 'ogg' | 'mp3' | 'mp4' | 'aac' | 'webm'
  /** What the file says of itself; `null` where telling would take a decoder. */
  readonly sampleRateHz: number | null
  /** False where something may have been lost when it was packed. */
  readonly lossless: boolean
}

/**
 * Tells the packed sound files apart by their first bytes, whatever they are called.
 *
 * The rate matters because a browser decodes to whatever rate it is asked for: asked for the file's own, it leaves the
 * samples alone.
 *
 * @param bytes The file, or its first 64 kB.
 * @returns `null` for WAV and for everything else.
 * @see IETF RFC 9639 (FLAC), section 8.2, STREAMINFO. IETF RFC 3533 (Ogg). Vorbis I specification, section 4.2.2.
 *   IETF RFC 7845 (Opus in Ogg: always decoded at 48 kHz). ISO/IEC 11172-3, section 2.4.2.3 (MPEG audio header), from memory.
 */
export function packedFormat(bytes: Uint8Array): PackedFormat | null {
  const at = afterId3(bytes)
  if (hasText(bytes, at, 'fLaC')) return { kind: 'flac', sampleRateHz: flacRateHz(bytes, at), lossless: true }
  if (hasText(bytes, 0, 'OggS')) return ogg(bytes)
  if (hasText(bytes, 4, 'ftyp')) return { kind: 'mp4', sampleRateHz: null, lossless: false }
  if (bytes[0] === 0x1a && bytes[1] === 0x45 && bytes[2] === 0xdf && bytes[3] === 0xa3) {
    return { kind: 'webm', sampleRateHz: null, lossless: false }
  }
  const mpeg = mpegRateHz(bytes, at)
  if (mpeg !== null) return { kind: 'mp3', sampleRateHz: mpeg, lossless: false }
  if (bytes[at] === 0xff && (bytes[at + 1]! & 0xf6) === 0xf0)
    return { kind: 'aac', sampleRateHz: null, lossless: false }
  return null
}

function hasText(bytes: Uint8Array, at: number, text: string): boolean {
  return [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0))
}

function u32le(bytes: Uint8Array, at: number): number | null {
  if (at + 4 > bytes.length) return null
  return (bytes[at]! | (bytes[at + 1]! << 8) | (bytes[at + 2]! << 16) | (bytes[at + 3]! << 24)) >>> 0
}

/** Where the sound begins behind the tag that many MP3 and some FLAC files start with. */
function afterId3(bytes: Uint8Array): number {
  if (!hasText(bytes, 0, 'ID3') || bytes.length < 10) return 0
  const sizeBytes = (bytes[6]! << 21) | (bytes[7]! << 14) | (bytes[8]! << 7) | bytes[9]!
  return 10 + sizeBytes
}

function flacRateHz(bytes: Uint8Array, at: number): number | null {
  const rate = at + 18 // 'fLaC', block header of 4 bytes, 10 bytes of block and frame sizes; then 20 bits
  if (rate + 3 > bytes.length) return null
  return believable((bytes[rate]! << 12) | (bytes[rate + 1]! << 4) | (bytes[rate + 2]! >> 4))
}

function ogg(bytes: Uint8Array): PackedFormat {
  const packet = 27 + (bytes[26] ?? 0) // behind the page header and its table of segments
  if (hasText(bytes, packet, '\x7fFLAC')) {
    return { kind: 'ogg', sampleRateHz: flacRateHz(bytes, packet + 9), lossless: true }
  }
  if (hasText(bytes, packet, 'OpusHead')) return { kind: 'ogg', sampleRateHz: 48_000, lossless: false }
  const isVorbis = hasText(bytes, packet, '\x01vorbis')
  const rate = isVorbis ? u32le(bytes, packet + 12) : null
  return { kind: 'ogg', sampleRateHz: rate === null ? null : believable(rate), lossless: false }
}

const MPEG_RATES_HZ = [44_100, 48_000, 32_000]

/** `null` when this is no MPEG audio header of layer III or II. */
function mpegRateHz(bytes: Uint8Array, at: number): number | null {
  if (at + 4 > bytes.length || bytes[at] !== 0xff || (bytes[at + 1]! & 0xe0) !== 0xe0) return null
  const version = (bytes[at + 1]! >> 3) & 3 // 3: MPEG 1; 2: MPEG 2; 0: MPEG 2.5; 1: none
  const layer = (bytes[at + 1]! >> 1) & 3 // 1: III; 2: II; 0: none, as in AAC
  const index = (bytes[at + 2]! >> 2) & 3
  if (version === 1 || (layer !== 1 && layer !== 2) || index === 3 || bytes[at + 2]! >> 4 === 15) return null
  return MPEG_RATES_HZ[index]! / (version === 3 ? 1 : version === 2 ? 2 : 4)
}

function believable(rateHz: number): number | null {
  return rateHz >= 8000 && rateHz <= 192_000 ? rateHz : null
}
