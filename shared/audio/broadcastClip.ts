import { type BroadcastNotes, broadcastChunk, type CueFrame, chunkHead, cueChunks } from './broadcastChunks'
import { riffChunks } from './riffChunks'

/** A place in the sound that a player or an editor marks. */
export interface ClipMark {
  readonly timeS: number
  readonly label: string
}

/** More marks than anybody looks at. Chosen: the busiest clip of a minute has far fewer rings. */
const MOST_MARKS = 2000

/**
 * The same WAV file with a `bext` chunk before everything and cue points behind it: a Broadcast Wave that any editor
 * opens, and of which `plainClips` gives the file back byte for byte.
 *
 * What the file has already stays: a `bext` chunk of the recorder's is kept instead of ours.
 *
 * @param bytes A WAV file, whole.
 * @param marks Within the sound; others are left out. At most the first 2000 in time are written.
 * @returns `null` when the file cannot be told apart again: no plain RIFF in perfect order, cue points or labels of its
 *   own. It is best shared as it is.
 */
export function broadcastClip(
  bytes: Uint8Array,
  notes: BroadcastNotes,
  marks: readonly ClipMark[] = [],
): Uint8Array | null {
  const chunks = riffChunks(bytes)
  if (chunks === null || chunks.some(({ id }) => id === 'cue ' || id === 'LIST')) return null
  const format = chunks.find(({ id }) => id === 'fmt ')
  const data = chunks.find(({ id }) => id === 'data')
  if (format === undefined || data === undefined || format.size < 16) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset + format.at + 8, format.size)
  const sound = {
    channelCount: view.getUint16(2, true),
    sampleRateHz: view.getUint32(4, true),
    bits: view.getUint16(14, true),
  }
  const frames = Math.floor(data.size / Math.max(1, view.getUint16(12, true)))
  const before = chunks.some(({ id }) => id === 'bext') ? [] : [broadcastChunk(notes, sound)]
  return joined(bytes, before, cueChunks(cueFrames(marks, sound.sampleRateHz, frames)))
}

function cueFrames(marks: readonly ClipMark[], sampleRateHz: number, frames: number): CueFrame[] {
  return marks
    .map(({ timeS, label }) => ({ frame: Math.round(timeS * sampleRateHz), label }))
    .filter(({ frame }) => frame >= 0 && frame < frames)
    .sort((a, b) => a.frame - b.frame)
    .slice(0, MOST_MARKS)
}

function joined(bytes: Uint8Array, before: readonly Uint8Array[], after: readonly Uint8Array[]): Uint8Array | null {
  const added = [...before, ...after].reduce((sum, chunk) => sum + chunk.length, 0)
  if (bytes.length + added - 8 > 0xffffffff) return null
  const file = new Uint8Array(bytes.length + added)
  file.set(chunkHead('RIFF', file.length - 8))
  file.set(bytes.subarray(8, 12), 8)
  let at = 12
  for (const part of [...before, bytes.subarray(12), ...after]) {
    file.set(part, at)
    at += part.length
  }
  return file
}
