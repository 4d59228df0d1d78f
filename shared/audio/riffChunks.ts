/** A chunk of a RIFF file as it stands there. */
export interface RiffChunk {
  /** Its four characters. */
  readonly id: string
  /** Where its head begins. */
  readonly at: number
  /** Bytes of its body, without head and pad. */
  readonly size: number
  /** Where the next one begins: behind its pad byte. */
  readonly end: number
}

/** More chunks than any recorder or editor writes. */
const MOST_CHUNKS = 1000

/**
 * The chunks of a WAV file that is in perfect order: plain RIFF, every size right, every pad byte there, nothing behind
 * the last chunk. Only such a file can be taken apart and put together again byte for byte.
 *
 * @returns `null` for everything else, however well it may be readable.
 */
export function riffChunks(bytes: Uint8Array): readonly RiffChunk[] | null {
  if (bytes.length < 12 || textAt(bytes, 0) !== 'RIFF' || textAt(bytes, 8) !== 'WAVE') return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (view.getUint32(4, true) !== bytes.length - 8) return null
  const chunks: RiffChunk[] = []
  let at = 12
  while (at + 8 <= bytes.length) {
    const size = view.getUint32(at + 4, true)
    const end = at + 8 + size + (size % 2)
    if (end > bytes.length || chunks.length === MOST_CHUNKS) return null
    chunks.push({ id: textAt(bytes, at), at, size, end })
    at = end
  }
  return at === bytes.length ? chunks : null
}

function textAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4))
}
