import { type RiffChunk, riffChunks } from '../audio/riffChunks'
import { decodeFlac } from './decodeFlac'
import { encodeFlac } from './encodeFlac'

/** More is not packed as FLAC, nor unpacked: a few bytes can stand for any length of silence. Chosen: ten minutes of stereo. */
const MOST_BYTES = 100e6

const APPLICATION = 2
const MOST_BLOCK = 2 ** 24 - 5

/**
 * A WAV file as FLAC, of which `wavOfFlac` gives it back byte for byte: its other chunks stand in application blocks of the
 * registered id `riff`, as FLAC's own program keeps them and puts them back.
 *
 * @returns `null` for what is no WAV of 8, 16 or 24 bits in perfect order, or is larger than 100 MB.
 * @see IETF RFC 9639, section 8.4, and the registry of application ids: "riff", foreign RIFF metadata. [RFC9639]
 */
export function flacOf(wav: Uint8Array): Uint8Array | null {
  const chunks = riffChunks(wav)
  const layout = chunks === null ? null : layoutOf(wav, chunks)
  if (chunks === null || layout === null || wav.length > MOST_BYTES) return null
  const { data, bits, channelCount, sampleRateHz } = layout
  const heads = chunks.map((chunk) => wav.subarray(chunk.at, chunk === data ? chunk.at + 8 : chunk.end))
  if (heads.some((head) => head.length > MOST_BLOCK)) return null
  const blocks = [wav.subarray(0, 12), ...heads].map((content) => ({ type: APPLICATION, content: riffBlock(content) }))
  const sound = wav.subarray(data.at + 8, data.at + 8 + data.size)
  const flac = encodeFlac({ channels: samplesOf(sound, bits, channelCount), bits, sampleRateHz }, blocks)
  const back = wavOfFlac(flac)
  return back !== null && back.length === wav.length && back.every((byte, i) => byte === wav[i]) ? flac : null
}

/** The WAV file that `flacOf` was given; `null` for any other stream, and for what does not fit together. */
export function wavOfFlac(flac: Uint8Array): Uint8Array | null {
  const decoded = decodeFlac(flac, MOST_BYTES)
  if (decoded === null) return null
  const { channels, bits, blocks } = decoded
  const pieces = blocks.flatMap(({ type, content }) =>
    type === APPLICATION && isRiff(content) ? [content.subarray(4)] : [],
  )
  const sound = bytesOf(channels, bits)
  const parts = pieces.flatMap((piece) => (isData(piece) ? [piece, sound] : [piece]))
  const length = parts.reduce((sum, part) => sum + part.length, 0)
  if (pieces.filter(isData).length !== 1 || length > MOST_BYTES) return null
  const wav = new Uint8Array(length)
  let at = 0
  for (const part of parts) {
    wav.set(part, at)
    at += part.length
  }
  return wav
}

const ID = Uint8Array.of(0x72, 0x69, 0x66, 0x66) // riff

function riffBlock(content: Uint8Array): Uint8Array {
  const block = new Uint8Array(4 + content.length)
  block.set(ID)
  block.set(content, 4)
  return block
}

const isRiff = (content: Uint8Array) => ID.every((byte, i) => content[i] === byte)

/** The head of the chunk that the sound stands in. */
const isData = (piece: Uint8Array) => piece.length === 8 && String.fromCharCode(...piece.subarray(0, 4)) === 'data'

interface Layout {
  readonly data: RiffChunk
  readonly bits: number
  readonly channelCount: number
  readonly sampleRateHz: number
}

function layoutOf(wav: Uint8Array, chunks: readonly RiffChunk[]): Layout | null {
  const [format, ...formats] = chunks.filter(({ id }) => id === 'fmt ')
  const [data, ...datas] = chunks.filter(({ id }) => id === 'data')
  if (format === undefined || data === undefined || formats.length + datas.length > 0 || format.size < 16) return null
  const view = new DataView(wav.buffer, wav.byteOffset + format.at + 8, format.size)
  const channelCount = view.getUint16(2, true)
  const sampleRateHz = view.getUint32(4, true)
  const frameBytes = view.getUint16(12, true)
  const bits = view.getUint16(14, true)
  const isPlain = view.getUint16(0, true) === 1 && (bits === 8 || bits === 16 || bits === 24)
  const isWhole =
    frameBytes === (channelCount * bits) / 8 && data.size > 0 && data.size % frameBytes === 0 && data.size % 2 === 0
  const fits = channelCount >= 1 && channelCount <= 8 && sampleRateHz > 0 && sampleRateHz < 2 ** 20
  return isPlain && isWhole && fits ? { data, bits, channelCount, sampleRateHz } : null
}

/** Of 8 bits a WAV counts from 0, and FLAC from the middle. */
function samplesOf(sound: Uint8Array, bits: number, channelCount: number): Int32Array[] {
  const bytes = bits / 8
  const frames = sound.length / bytes / channelCount
  return Array.from({ length: channelCount }, (_, channel) => {
    const samples = new Int32Array(frames)
    for (let i = 0; i < frames; i++) {
      const at = (i * channelCount + channel) * bytes
      if (bits === 8) samples[i] = sound[at]! - 128
      else if (bits === 16) samples[i] = ((sound[at]! | (sound[at + 1]! << 8)) << 16) >> 16
      else samples[i] = ((sound[at]! | (sound[at + 1]! << 8) | (sound[at + 2]! << 16)) << 8) >> 8
    }
    return samples
  })
}

function bytesOf(channels: readonly Int32Array[], bits: number): Uint8Array {
  const bytes = Math.ceil(bits / 8)
  const sound = new Uint8Array(channels.length * channels[0]!.length * bytes)
  for (const [channel, samples] of channels.entries()) {
    for (let i = 0; i < samples.length; i++) {
      const at = (i * channels.length + channel) * bytes
      const value = bits === 8 ? samples[i]! + 128 : samples[i]!
      for (let k = 0; k < bytes; k++) sound[at + k] = value >> (8 * k)
    }
  }
  return sound
}
