import { FormatError } from '../base/errors'
import type { Problem } from '../base/problem'
import { audioProblem } from './problems'
import { type WavFormat, wavFormat } from './wavFormat'

/** Where the sound stands in a WAV file, after its header was checked against the file itself. */
export interface WavLayout {
  readonly format: WavFormat
  readonly littleEndian: boolean
  /** First byte of the sound. */
  readonly soundAt: number
  /** Whole frames that are really there; at least 1. */
  readonly frames: number
  readonly problems: readonly Problem[]
}

const RIFF = fourCharacters('RIFF')
const RIFX = fourCharacters('RIFX')
const RF64 = fourCharacters('RF64')
const BW64 = fourCharacters('BW64')
const WAVE = fourCharacters('WAVE')
const FMT = fourCharacters('fmt ')
const DATA = fourCharacters('data')
const DS64 = fourCharacters('ds64')

/** Chunks met in practice; the list only settles where a chunk begins when its neighbour's size is in doubt. */
const KNOWN = new Set(
  ['fmt ', 'data', 'ds64', 'LIST', 'fact', 'bext', 'cue ', 'smpl', 'inst', 'iXML', 'JUNK', 'junk', 'PAD ', 'PEAK']
    .concat(['id3 ', 'ID3 ', '_PMX', 'plst', 'DISP', 'FLLR', 'axml', 'chna', 'acid', 'LGWV', 'afsp'])
    .map(fourCharacters),
)

/** The RF64 sign for "see ds64", and what a streaming writer leaves in place of a size it does not know. */
const UNKNOWN_SIZE = 0xffffffff

/** Other streaming writers leave nearly 2³¹ or 2³²; no clip is that long. */
const STREAMED_FROM_BYTES = 0x7ffff000

/** A file that breaks off after more than this share of its sound is as good as whole. */
const NEARLY_WHOLE_SHARE = 0.9 // chosen

/**
 * Most frames that are read: 10 min at 48 kHz, half an hour at 16 kHz. Chosen: listening takes seconds, and evidence needs
 * some twenty bytes of memory a frame. A recorder left running over a whole line has no one place anyway.
 */
export const MOST_FRAMES = 30_000_000

/** Most samples of all channels together, which bounds the memory of files with many channels. Chosen: four such clips. */
export const MOST_SAMPLES = 4 * MOST_FRAMES

/** How other sound files begin. */
const OTHER_FILES: readonly (readonly [start: string, offset: number, name: string])[] = [
  ['fLaC', 0, 'a FLAC file'],
  ['OggS', 0, 'an Ogg file'],
  ['ID3', 0, 'an MP3 file'],
  ['\xff\xfb', 0, 'an MP3 file'],
  ['FORM', 0, 'an AIFF file'],
  ['caff', 0, 'a CAF file'],
  ['ftyp', 4, 'an M4A or MP4 file'],
  ['\x1aE\xdf\xa3', 0, 'a WebM file'],
  ['#!AMR', 0, 'an AMR file'],
  ['riff', 0, 'a Wave64 file'],
  ['PK\x03\x04', 0, 'a zip file'],
]

/**
 * Finds format and sound in a RIFF, RIFX, RF64 or BW64 file whose header may lie.
 *
 * Nothing is believed that the bytes do not bear out, nothing is allocated by a number from the header, and the file is
 * walked at most twice. Chunks may come in any order, with or without their pad byte.
 *
 * @throws {FormatError} empty; not a WAV; no format; no sound; no whole frame; too long; what `wavFormat` refuses.
 * @see EBU Tech 3306 for RF64 and its ds64 chunk. [EBU3306]
 */
export function wavLayout(bytes: Uint8Array, fileName: string): WavLayout {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const container = checkedContainer(bytes, view, fileName)
  const littleEndian = container !== RIFX
  const found = walk(view, littleEndian)
  if (found.formatAt === null) throw new FormatError(fileName, '', 'a WAV without a format chunk; save it as PCM WAV')
  const formatEnd = Math.min(bytes.length, found.formatAt + found.formatBytes)
  const chunk = new DataView(view.buffer, view.byteOffset + found.formatAt, formatEnd - found.formatAt)
  const format = wavFormat(chunk, littleEndian, fileName, `byte ${found.formatAt}`)
  if (found.dataAt === null) {
    throw new FormatError(
      fileName,
      '',
      'a WAV without a data chunk, so without sound; record it again or copy it again',
    )
  }
  const sound = soundBytes(view, { ...found, dataAt: found.dataAt })
  const frameBytes = format.containerBytes * format.channels
  const frames = Math.floor(sound.bytes / frameBytes)
  if (frames === 0) {
    throw new FormatError(fileName, `byte ${found.dataAt}`, 'holds no sound, not one whole sample; record it again')
  }
  const mostFrames = Math.min(MOST_FRAMES, Math.floor(MOST_SAMPLES / format.channels))
  if (frames > mostFrames) throw new FormatError(fileName, '', tooLong(frames, mostFrames, format))
  const problems: Problem[] = []
  if (found.lost !== null) problems.push(audioProblem('header_lies', 'note', { chunk: found.lost }))
  if (!format.consistent) problems.push(audioProblem('header_lies', 'note', { chunk: 'fmt' }))
  if (sound.problem === 'truncated') problems.push(truncated(sound, frameBytes * format.sampleRateHz))
  else if (sound.problem === 'header_lies') problems.push(audioProblem('header_lies', 'note', { chunk: 'data' }))
  else if (sound.problem === 'header_not_patched') problems.push(audioProblem('header_not_patched', 'note', {}))
  return { format, littleEndian, soundAt: found.dataAt, frames, problems }
}

function tooLong(frames: number, mostFrames: number, { sampleRateHz, channels }: WavFormat): string {
  const minutes = (count: number) => Math.floor(count / sampleRateHz / 6) / 10
  const ofChannels = mostFrames < MOST_FRAMES ? ` and ${channels} channels` : ''
  const limit = `at most ${minutes(mostFrames)} min are read at ${sampleRateHz} Hz${ofChannels}`
  return `holds ${minutes(frames)} min of sound, and ${limit}; cut it down to the seconds you listened`
}

/** The four characters of the container, once it is sure that this is a WAV file at all. */
function checkedContainer(bytes: Uint8Array, view: DataView, fileName: string): number {
  if (bytes.length === 0) throw new FormatError(fileName, '', 'the file is empty; record it again or copy it again')
  const container = bytes.length < 12 ? 0 : view.getUint32(0)
  if ([RIFF, RIFX, RF64, BW64].includes(container) && view.getUint32(8) === WAVE) return container
  const other = OTHER_FILES.find(([start, offset]) =>
    [...start].every((character, i) => bytes[offset + i] === character.charCodeAt(0)),
  )
  throw new FormatError(
    fileName,
    '',
    `${other ? `is ${other[2]}, not a WAV` : 'is not a WAV file'}; save it as PCM WAV`,
  )
}

interface Found {
  readonly formatAt: number | null
  readonly formatBytes: number
  readonly dataAt: number | null
  /** As the header has it; of a ds64 chunk when there is one. */
  readonly dataBytes: number
  /** Length of the whole file as the header has it. */
  readonly fileBytes: number
  /** The chunk whose size had to be disbelieved on the way, if any. */
  readonly lost: string | null
}

/** Goes from chunk to chunk; where a size leads nowhere, on to the next `fmt ` or `data` that can be seen. */
function walk(view: DataView, littleEndian: boolean): Found {
  const fileBytes = view.getUint32(4, littleEndian) + 8
  let found: Found = { formatAt: null, formatBytes: 0, dataAt: null, dataBytes: 0, fileBytes, lost: null }
  let long: { fileBytes: number; dataBytes: number } | null = null
  let at = 12
  while (at + 8 <= view.byteLength && (found.formatAt === null || found.dataAt === null)) {
    const id = view.getUint32(at)
    const size = view.getUint32(at + 4, littleEndian)
    const body = at + 8
    if (id === FMT && found.formatAt === null) found = { ...found, formatAt: body, formatBytes: size }
    if (id === DATA && found.dataAt === null) found = { ...found, dataAt: body, dataBytes: size }
    if (id === DS64 && body + 16 <= view.byteLength) long = longSizes(view, body, littleEndian)
    const next = nextChunk(view, body, size)
    if (next === null && id !== DATA) {
      found = { ...found, lost: found.lost ?? textOf(id) }
      at = nextSeen(view, body, found)
    } else at = next ?? view.byteLength
  }
  if (found.dataAt === null || found.formatAt === null) found = searched(view, littleEndian, found)
  return found.dataBytes === UNKNOWN_SIZE && long !== null ? { ...found, ...long } : found
}

/** The two 64-bit sizes at the head of a ds64 chunk. */
function longSizes(view: DataView, body: number, littleEndian: boolean): { fileBytes: number; dataBytes: number } {
  const at = (offset: number) =>
    view.getUint32(body + offset, littleEndian) + view.getUint32(body + offset + 4, littleEndian) * 2 ** 32
  return { fileBytes: at(0) + 8, dataBytes: at(8) }
}

/** Where the chunk after this one begins: with its pad byte, or without when that makes more sense; `null`: nowhere. */
function nextChunk(view: DataView, body: number, size: number): number | null {
  const end = body + size
  if (end > view.byteLength) return null
  const padded = end + (size % 2)
  if (padded + 8 > view.byteLength) return padded
  for (const makesSense of [(id: number) => KNOWN.has(id), printable]) {
    if (makesSense(view.getUint32(padded))) return padded
    if (makesSense(view.getUint32(end))) return end
  }
  return null
}

/** The next place from `from` on with the name of a chunk that is still missing; the end of the file when there is none. */
function nextSeen(view: DataView, from: number, found: Found): number {
  for (let at = from; at + 8 <= view.byteLength; at++) {
    const id = view.getUint32(at)
    if ((id === FMT && found.formatAt === null) || (id === DATA && found.dataAt === null)) return at
  }
  return view.byteLength
}

/**
 * The chunk that a straight walk stepped over because another one's size swallowed it. A word in a comment looks the
 * same, so what follows has to make sense too.
 */
function searched(view: DataView, littleEndian: boolean, found: Found): Found {
  for (let at = 12; at + 8 <= view.byteLength; at++) {
    const id = view.getUint32(at)
    if (id !== FMT && id !== DATA) continue
    const size = view.getUint32(at + 4, littleEndian)
    const body = at + 8
    const fits = body + size <= view.byteLength
    if (id === FMT && found.formatAt === null && fits && size >= 16 && size <= 64) {
      const lost = found.lost ?? swallower(view, littleEndian, at)
      return searched(view, littleEndian, { ...found, formatAt: body, formatBytes: size, lost })
    }
    if (id === DATA && found.dataAt === null && (fits || size >= STREAMED_FROM_BYTES)) {
      return { ...found, dataAt: body, dataBytes: size, lost: found.lost ?? swallower(view, littleEndian, at) }
    }
  }
  return found
}

/** The name of the chunk that claims the byte at `place`. */
function swallower(view: DataView, littleEndian: boolean, place: number): string {
  let at = 12
  for (;;) {
    const next = nextChunk(view, at + 8, view.getUint32(at + 4, littleEndian))
    if (next === null || next > place) return textOf(view.getUint32(at))
    at = next
  }
}

interface Sound {
  readonly bytes: number
  readonly claimedBytes: number
  readonly problem: 'truncated' | 'header_lies' | 'header_not_patched' | null
}

/** How much of the file is sound, whatever the data chunk says. */
function soundBytes(view: DataView, found: Found & { dataAt: number }): Sound {
  const left = view.byteLength - found.dataAt
  const claimedBytes = found.dataBytes
  if (claimedBytes === 0) {
    const empty = left < 8 || KNOWN.has(view.getUint32(found.dataAt))
    return { bytes: empty ? 0 : left, claimedBytes, problem: empty ? null : 'header_not_patched' }
  }
  if (claimedBytes <= left) return { bytes: claimedBytes, claimedBytes, problem: null }
  const streamed = claimedBytes >= STREAMED_FROM_BYTES && claimedBytes <= UNKNOWN_SIZE
  if (streamed) return { bytes: left, claimedBytes, problem: 'header_not_patched' }
  // A file that was cut off still says in its first line how long it was; one that was made up says anything.
  const cutOff = found.fileBytes >= found.dataAt + claimedBytes
  return { bytes: left, claimedBytes, problem: cutOff ? 'truncated' : 'header_lies' }
}

function truncated(sound: Sound, bytesPerS: number): Problem {
  const share = sound.bytes / sound.claimedBytes
  const values = { found_s: sound.bytes / bytesPerS, expected_s: sound.claimedBytes / bytesPerS }
  return audioProblem('truncated', share > NEARLY_WHOLE_SHARE ? 'note' : 'weak', values)
}

/** True when all four bytes are characters that a chunk's name may have. */
function printable(id: number): boolean {
  for (let shift = 0; shift < 32; shift += 8) {
    const character = (id >>> shift) & 0xff
    if (character < 0x20 || character > 0x7e) return false
  }
  return true
}

function fourCharacters(text: string): number {
  return [...text].reduce((id, character) => ((id << 8) | character.charCodeAt(0)) >>> 0, 0)
}

function textOf(id: number): string {
  const text = String.fromCharCode(id >>> 24, (id >>> 16) & 0xff, (id >>> 8) & 0xff, id & 0xff)
  return printable(id) ? text.trim() : 'unknown'
}
