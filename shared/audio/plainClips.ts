import { chunkHead } from './broadcastChunks'
import { type RiffChunk, riffChunks } from './riffChunks'

/**
 * What a clip may have been before `broadcastClip` added to it, likeliest first; the file as it is last. Which one it was
 * is told by the digest.
 *
 * @returns At least the file itself. Pieces share no memory with it but for the file itself.
 */
export function plainClips(bytes: Uint8Array): readonly Uint8Array[] {
  const chunks = riffChunks(bytes)
  if (chunks === null) return [bytes]
  const withoutCues = chunks.slice(0, chunks.length - cueCount(chunks))
  const hasBext = chunks[0]?.id === 'bext'
  const kept = [...(hasBext ? [withoutCues.slice(1)] : []), withoutCues, ...(hasBext ? [chunks.slice(1)] : [])].filter(
    (parts) => parts.length < chunks.length,
  )
  return [...kept.map((parts) => joined(bytes, parts)), bytes]
}

function cueCount(chunks: readonly RiffChunk[]): 0 | 2 {
  return chunks.at(-2)?.id === 'cue ' && chunks.at(-1)?.id === 'LIST' ? 2 : 0
}

/** Neighbouring chunks as a file of their own. */
function joined(bytes: Uint8Array, chunks: readonly RiffChunk[]): Uint8Array {
  const body = chunks.length === 0 ? new Uint8Array() : bytes.subarray(chunks[0]!.at, chunks.at(-1)!.end)
  const file = new Uint8Array(12 + body.length)
  file.set(chunkHead('RIFF', file.length - 8))
  file.set(bytes.subarray(8, 12), 8)
  file.set(body, 12)
  return file
}
