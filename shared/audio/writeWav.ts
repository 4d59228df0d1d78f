import wavefile from 'wavefile/dist/wavefile.js'
import { InputError } from '../base/errors'
import type { Random } from '../base/random'
import type { Clip } from './clip'
import { ENCODED_BYTES, encodeSamples, type WrittenEncoding } from './encodeSamples'

/** What the `bext` chunk of a Broadcast Wave file tells; plain ASCII, other characters become `?`. */
export interface BroadcastNotes {
  /** At most 256 characters; the rest is cut off, as in the next two. */
  readonly description: string
  /** Who or what made the file, at most 32. */
  readonly originator: string
  /** The originator's own name for this clip, at most 32. */
  readonly originatorReference: string
  /** `yyyy-mm-dd`, local to the place. */
  readonly date: string
  /** `hh:mm:ss`, when the clip began, local to the place. */
  readonly time: string
}

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

/** wavefile joins its bytes mark by mark, in a time that goes with the square of their number: 5000 took 21 s. */
const CUES_AT_ONCE = 50

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

interface CueFrame {
  readonly frame: number
  readonly label: string
}

function checkedCues(cues: readonly CueMark[], sampleRateHz: number, frames: number): CueFrame[] {
  return cues
    .map((cue) => {
      const frame = Math.round(cue.timeS * sampleRateHz)
      if (!(frame >= 0 && frame < frames)) throw new InputError(`a cue point at ${cue.timeS} s lies outside the clip`)
      return { frame, label: plain(cue.label) }
    })
    .sort((a, b) => a.frame - b.frame)
}

/** `bext` before the sound, `cue ` and `LIST` after it, as wavefile makes them. */
function broadcastChunks(clip: Clip, encoding: WrittenEncoding, notes: BroadcastNotes | undefined): Uint8Array[] {
  if (notes === undefined) return []
  const fields = broadcastFields(notes, clip, encoding)
  return [madeByWavefile((carrier) => Object.assign(carrier.bext, fields)).get('bext')!]
}

/** Batches of cue points and labels from wavefile, joined: each body begins with four bytes of its own. */
function cueChunks(cues: readonly CueFrame[]): Uint8Array[] {
  if (cues.length === 0) return []
  const batches: Map<string, Uint8Array>[] = []
  for (let first = 0; first < cues.length; first += CUES_AT_ONCE) {
    batches.push(madeByWavefile((carrier) => addCues(carrier, cues.slice(first, first + CUES_AT_ONCE), first)))
  }
  const count = new Uint8Array(4)
  new DataView(count.buffer).setUint32(0, cues.length, true)
  const joined = (id: string, start: Uint8Array) => {
    const parts = [start, ...batches.map((batch) => batch.get(id)!.subarray(12))]
    const chunk = new Uint8Array(8 + lengthOf(parts))
    let at = put(chunk, 0, chunkHead(id, chunk.length - 8))
    for (const part of parts) at = put(chunk, at, part)
    return chunk
  }
  return [joined('cue ', count), joined('LIST', ascii('adtl'))]
}

type Carrier = InstanceType<typeof wavefile.WaveFile>

/** The chunks, head and pad byte included, of a file without sound that `fill` put something into. */
function madeByWavefile(fill: (carrier: Carrier) => void): Map<string, Uint8Array> {
  const carrier = new wavefile.WaveFile()
  carrier.fromScratch(1, 8000, '16', [])
  fill(carrier)
  const bytes = carrier.toBuffer()
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const chunks = new Map<string, Uint8Array>()
  for (let at = 12; at < bytes.length; ) {
    const size = view.getUint32(at + 4, true)
    const end = at + 8 + size + (size % 2)
    chunks.set(String.fromCharCode(...bytes.subarray(at, at + 4)), bytes.subarray(at, end))
    at = end
  }
  return chunks
}

/** Version 1 of the chunk: version 2 adds loudness figures, and none are measured. [EBU3285] */
function broadcastFields(notes: BroadcastNotes, clip: Clip, encoding: WrittenEncoding) {
  const time = /^([01]\d|2[0-3]):([0-5]\d):([0-5]\d)$/.exec(notes.time)
  if (!/^\d{4}-\d\d-\d\d$/.test(notes.date)) throw new InputError(`date is "${notes.date}"; must be yyyy-mm-dd`)
  if (time === null) throw new InputError(`time is "${notes.time}"; must be hh:mm:ss`)
  const sinceMidnight = (Number(time[1]) * 3600 + Number(time[2]) * 60 + Number(time[3])) * clip.sampleRateHz
  const bits = ENCODED_BYTES[encoding] * 8
  const mode = clip.channels.length === 1 ? 'mono' : clip.channels.length === 2 ? 'stereo' : 'multi'
  return {
    chunkId: 'bext',
    // wavefile writes what it is given, too long or not, so everything is cut here.
    description: plain(notes.description).slice(0, 256),
    originator: plain(notes.originator).slice(0, 32),
    originatorReference: plain(notes.originatorReference).slice(0, 32),
    originationDate: notes.date,
    originationTime: notes.time,
    timeReference: [sinceMidnight % 2 ** 32, Math.floor(sinceMidnight / 2 ** 32)],
    version: 1,
    codingHistory: `A=PCM,F=${clip.sampleRateHz},W=${bits},M=${mode}\r\n`,
  }
}

/** wavefile's own setCuePoint takes milliseconds, sorts anew each time and leaves the play position 0. */
function addCues(carrier: Carrier, cues: readonly CueFrame[], numbersUsed: number): void {
  const points = cues.map(({ frame }, i) => ({
    dwName: numbersUsed + i + 1,
    dwPosition: frame,
    fccChunk: 'data',
    dwChunkStart: 0,
    dwBlockStart: 0,
    dwSampleOffset: frame,
  }))
  const subChunks = cues.map(({ label }, i) => ({
    chunkId: 'labl',
    chunkSize: 0,
    dwName: numbersUsed + i + 1,
    value: label,
  }))
  carrier.cue = { chunkId: 'cue ', chunkSize: 0, dwCuePoints: points.length, points }
  carrier.LIST = [{ chunkId: 'LIST', chunkSize: 0, format: 'adtl', subChunks }]
}

/** Printable ASCII only: the standards of both chunks ask for it. */
function plain(text: string): string {
  return text.replace(/[^\x20-\x7e]/gu, '?')
}

function chunkHead(id: string, size: number): Uint8Array {
  const head = new Uint8Array(8)
  head.set(ascii(id))
  new DataView(head.buffer).setUint32(4, size, true)
  return head
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
