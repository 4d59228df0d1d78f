import wavefile from 'wavefile/dist/wavefile.js'
import { InputError } from '../base/errors'

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

/** How the sound of a file is written, for its coding history. */
export interface WrittenSound {
  readonly sampleRateHz: number
  readonly channelCount: number
  readonly bits: number
}

/** A place in the sound by its frame, with a name. */
export interface CueFrame {
  readonly frame: number
  readonly label: string
}

/** wavefile joins its bytes mark by mark, in a time that goes with the square of their number: 5000 took 21 s. */
const CUES_AT_ONCE = 50

/**
 * The `bext` chunk of a Broadcast Wave file, head and pad byte included.
 *
 * @throws {InputError} a date or a time out of form.
 * @see EBU Tech 3285. [EBU3285]
 */
export function broadcastChunk(notes: BroadcastNotes, sound: WrittenSound): Uint8Array {
  const fields = broadcastFields(notes, sound)
  return madeByWavefile((carrier) => Object.assign(carrier.bext, fields)).get('bext')!
}

/**
 * The `cue ` chunk and the `LIST` chunk of its labels, as wavefile makes them.
 *
 * Batches of cue points and labels are joined: each body begins with four bytes of its own.
 *
 * @param cues In order of time; none gives no chunk.
 */
export function cueChunks(cues: readonly CueFrame[]): Uint8Array[] {
  if (cues.length === 0) return []
  const batches: Map<string, Uint8Array>[] = []
  for (let first = 0; first < cues.length; first += CUES_AT_ONCE) {
    batches.push(madeByWavefile((carrier) => addCues(carrier, cues.slice(first, first + CUES_AT_ONCE), first)))
  }
  const count = new Uint8Array(4)
  new DataView(count.buffer).setUint32(0, cues.length, true)
  const joined = (id: string, start: Uint8Array) => {
    const parts = [start, ...batches.map((batch) => batch.get(id)!.subarray(12))]
    const body = parts.reduce((sum, part) => sum + part.length, 0)
    const chunk = new Uint8Array(8 + body)
    chunk.set(chunkHead(id, body))
    let at = 8
    for (const part of parts) {
      chunk.set(part, at)
      at += part.length
    }
    return chunk
  }
  return [joined('cue ', count), joined('LIST', ascii('adtl'))]
}

/** Eight bytes: name and size of a chunk. */
export function chunkHead(id: string, size: number): Uint8Array {
  const head = new Uint8Array(8)
  head.set(ascii(id))
  new DataView(head.buffer).setUint32(4, size, true)
  return head
}

/** Printable ASCII only: the standards of both chunks ask for it. */
export function plainAscii(text: string): string {
  return text.replace(/[^\x20-\x7e]/gu, '?')
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
function broadcastFields(notes: BroadcastNotes, { sampleRateHz, channelCount, bits }: WrittenSound) {
  const time = /^([01]\d|2[0-3]):([0-5]\d):([0-5]\d)$/.exec(notes.time)
  if (!/^\d{4}-\d\d-\d\d$/.test(notes.date)) throw new InputError(`date is "${notes.date}"; must be yyyy-mm-dd`)
  if (time === null) throw new InputError(`time is "${notes.time}"; must be hh:mm:ss`)
  const sinceMidnight = (Number(time[1]) * 3600 + Number(time[2]) * 60 + Number(time[3])) * sampleRateHz
  const mode = channelCount === 1 ? 'mono' : channelCount === 2 ? 'stereo' : 'multi'
  return {
    chunkId: 'bext',
    // wavefile writes what it is given, too long or not, so everything is cut here.
    description: plainAscii(notes.description).slice(0, 256),
    originator: plainAscii(notes.originator).slice(0, 32),
    originatorReference: plainAscii(notes.originatorReference).slice(0, 32),
    originationDate: notes.date,
    originationTime: notes.time,
    timeReference: [sinceMidnight % 2 ** 32, Math.floor(sinceMidnight / 2 ** 32)],
    version: 1,
    codingHistory: `A=PCM,F=${sampleRateHz},W=${bits},M=${mode}\r\n`,
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

function ascii(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => character.charCodeAt(0))
}
