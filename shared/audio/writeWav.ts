import { InputError } from '../base/errors'
import type { Random } from '../base/random'
import { type BroadcastNotes, broadcastChunk, type CueFrame, chunkHead, cueChunks, plainAscii } from './broadcastChunks'
import type { Clip } from './clip'
import { ENCODED_BYTES, encodeSamples, type WrittenEncoding } from './encodeSamples'

/** A place in the clip with a name, for players and editors that show markers. */
export interface CueMark {
  /** From the clip's start, s; within the clip. */
  readonly timeS: number
  /** Plain ASCII, other characters become `?`. */
  readonly label: string
}

export interface WriteWavOptions {
  /** `pcm16` unless said. */
  readonly encoding?: WrittenEncoding
  /** Triangular dither from this source; none unless given. */
  readonly dither?: Random
  readonly broadcast?: BroadcastNotes
  /** In any order; written in order of time. */
  readonly cues?: readonly CueMark[]
}

/** The RIFF size field holds no more. */
const LONGEST_BYTES = 0xffffffff

/**
 * A clip as the bytes of a WAV file: the same clip and options give the same bytes.
 *
 * Plain PCM is the canonical 44-byte header and the samples; float has the `fact` chunk that its standard asks for. The
 * `bext` chunk stands before the sound, cue points and their labels after it. The samples are written here, since
 * wavefile is slow with them and leaves out the pad byte after odd sound; it makes the `bext`, `cue ` and `LIST` chunks.
 *
 * @throws {InputError} no channel or channels of different lengths; a rate that is no whole number; a date, a time or a
 *   cue out of form; a file over 4 GiB.
 * @see RIFF: mono 16-bit 48 kHz for 1 s makes a file of 96 044 bytes. EBU Tech 3285 for `bext`. [EBU3285]
 */
export function writeWav(clip: Clip, options: WriteWavOptions = {}): Uint8Array {
  const encoding = options.encoding ?? 'pcm16'
  const frames = checkedFrames(clip)
  const soundBytes = frames * clip.channels.length * ENCODED_BYTES[encoding]
  const cues = checkedCues(options.cues ?? [], clip.sampleRateHz, frames)
  const before = [...broadcastChunks(clip, encoding, options.broadcast), ...formatChunks(clip, encoding)]
  const after = cueChunks(cues)
  const soundAt = 12 + lengthOf(before) + 8
  const total = soundAt + soundBytes + (soundBytes % 2) + lengthOf(after)
  if (total > LONGEST_BYTES) throw new InputError(`the file would have ${total} bytes; a WAV holds less than 4 GiB`)
  const file = new Uint8Array(total)
  let at = put(file, 0, chunkHead('RIFF', total - 8))
  at = put(file, at, ascii('WAVE'))
  for (const chunk of before) at = put(file, at, chunk)
  put(file, at, chunkHead('data', soundBytes))
  encodeSamples(clip.channels, encoding, file.subarray(soundAt), options.dither ?? null)
  at = soundAt + soundBytes + (soundBytes % 2)
  for (const chunk of after) at = put(file, at, chunk)
  return file
}

function checkedFrames(clip: Clip): number {
  const frames = clip.channels[0]?.length
  if (frames === undefined) throw new InputError('a clip without a channel cannot be written')
  if (clip.channels.some((samples) => samples.length !== frames)) throw new InputError('channels differ in length')
  if (!(Number.isInteger(clip.sampleRateHz) && clip.sampleRateHz > 0)) {
    throw new InputError(`sampleRateHz is ${clip.sampleRateHz}; must be a whole number`)
  }
  return frames
}

/** `fmt `, and for floats `fact`. */
function formatChunks(clip: Clip, encoding: WrittenEncoding): Uint8Array[] {
  const float = encoding === 'float32'
  const blockBytes = ENCODED_BYTES[encoding] * clip.channels.length
  const format = new Uint8Array(float ? 26 : 24)
  const view = new DataView(format.buffer)
  format.set(chunkHead('fmt ', format.length - 8))
  view.setUint16(8, float ? 3 : 1, true)
  view.setUint16(10, clip.channels.length, true)
  view.setUint32(12, clip.sampleRateHz, true)
  view.setUint32(16, clip.sampleRateHz * blockBytes, true)
  view.setUint16(20, blockBytes, true)
  view.setUint16(22, ENCODED_BYTES[encoding] * 8, true)
  if (!float) return [format]
  const fact = new Uint8Array(12)
  fact.set(chunkHead('fact', 4))
  new DataView(fact.buffer).setUint32(8, clip.channels[0]!.length, true)
  return [format, fact]
}

function checkedCues(cues: readonly CueMark[], sampleRateHz: number, frames: number): CueFrame[] {
  return cues
    .map((cue) => {
      const frame = Math.round(cue.timeS * sampleRateHz)
      if (!(frame >= 0 && frame < frames)) throw new InputError(`a cue point at ${cue.timeS} s lies outside the clip`)
      return { frame, label: plainAscii(cue.label) }
    })
    .sort((a, b) => a.frame - b.frame)
}

function broadcastChunks(clip: Clip, encoding: WrittenEncoding, notes: BroadcastNotes | undefined): Uint8Array[] {
  if (notes === undefined) return []
  const { sampleRateHz, channels } = clip
  return [broadcastChunk(notes, { sampleRateHz, channelCount: channels.length, bits: ENCODED_BYTES[encoding] * 8 })]
}

function ascii(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => character.charCodeAt(0))
}

function put(file: Uint8Array, at: number, bytes: Uint8Array): number {
  file.set(bytes, at)
  return at + bytes.length
}

function lengthOf(chunks: readonly Uint8Array[]): number {
  return chunks.reduce((sum, chunk) => sum + chunk.length, 0)
}
