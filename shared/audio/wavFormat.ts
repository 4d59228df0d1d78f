import { FormatError } from '../base/errors'

/** How the samples stand in the data chunk. */
export interface WavFormat {
  readonly kind: 'pcm' | 'float'
  /** Bits that carry sound, at most those of the container. */
  readonly bits: number
  /** Bytes a sample takes: 1 (unsigned) to 4 for integers, 4 or 8 for floats. Sound stands in the upper bits. */
  readonly containerBytes: number
  readonly channels: number
  readonly sampleRateHz: number
  /** False when channel count, block size and byte rate of the header do not all agree. */
  readonly consistent: boolean
}

/** The range the rest of the house is made for. */
const LOWEST_RATE_HZ = 8_000
const HIGHEST_RATE_HZ = 192_000

const PCM = 1
const FLOAT = 3
const EXTENSIBLE = 0xfffe

/** Format tags of the WAVE registry that a recorder may well write, in the words its menu uses. [RFC2361] */
const OTHER_ENCODINGS: Readonly<Record<number, string>> = {
  2: 'Microsoft ADPCM',
  6: 'A-law',
  7: 'mu-law',
  17: 'IMA ADPCM',
  49: 'GSM 6.10',
  80: 'MPEG layer 2',
  85: 'MP3',
  255: 'AAC',
  353: 'Windows Media Audio',
  26447: 'Ogg Vorbis',
  61868: 'FLAC',
}

/**
 * What the `fmt ` chunk says.
 *
 * @param chunk The body of the chunk.
 * @param littleEndian False in a RIFX file.
 * @param place Where the chunk stands, for the message.
 * @throws {FormatError} a chunk cut short, an encoding that is not PCM or float, no channel, a rate outside 8 to
 *   192 kHz, a depth that does not exist, channels and block size that contradict each other.
 * @see RFC 2361 for the tags. [RFC2361] Microsoft's WAVEFORMATEXTENSIBLE: the container's bits and, apart, the valid
 *   ones, which stand at its upper end. [WaveFormatExtensible]
 */
export function wavFormat(chunk: DataView, littleEndian: boolean, fileName: string, place: string): WavFormat {
  const fail = (mend: string) => new FormatError(fileName, place, mend)
  if (chunk.byteLength < 16) throw fail('the format chunk is cut short; record it again or copy the file again')
  const tag = encodingTag(chunk, littleEndian)
  if (tag === null) throw fail('an extensible format without its subformat; save it as PCM WAV')
  if (tag !== PCM && tag !== FLOAT) throw fail(`holds ${encodingName(tag)} sound; save it as PCM WAV`)
  const channels = chunk.getUint16(2, littleEndian)
  const sampleRateHz = chunk.getUint32(4, littleEndian)
  if (channels === 0) throw fail('names no channel; save it again as PCM WAV')
  if (sampleRateHz < LOWEST_RATE_HZ || sampleRateHz > HIGHEST_RATE_HZ) {
    throw fail(`the sample rate is ${sampleRateHz} Hz; save it with one from 8000 to 192000 Hz`)
  }
  const bits = chunk.getUint16(14, littleEndian)
  const kind = tag === FLOAT ? 'float' : 'pcm'
  const allowed = kind === 'float' ? bits === 32 || bits === 64 : bits >= 1 && bits <= 32
  if (!allowed) throw fail(`${bits}-bit ${kind} samples cannot be read; save it as 16, 24 or 32-bit PCM WAV`)
  const block = blockOf(chunk, littleEndian, kind, bits)
  if (block === null) {
    throw fail(
      `${channels} channels of ${bits} bits do not make blocks of ${chunk.getUint16(12, littleEndian)} bytes; save it again as PCM WAV`,
    )
  }
  return { kind, bits: validBits(chunk, littleEndian, bits), sampleRateHz, ...block }
}

/** The format tag, or the one that an extensible format wraps. */
function encodingTag(chunk: DataView, littleEndian: boolean): number | null {
  const tag = chunk.getUint16(0, littleEndian)
  if (tag !== EXTENSIBLE) return tag
  return chunk.byteLength < 40 ? null : chunk.getUint32(24, littleEndian)
}

function encodingName(tag: number): string {
  return OTHER_ENCODINGS[tag] ?? `an unknown kind (0x${tag.toString(16)}) of`
}

function validBits(chunk: DataView, littleEndian: boolean, bits: number): number {
  if (chunk.getUint16(0, littleEndian) !== EXTENSIBLE) return bits
  const valid = chunk.getUint16(18, littleEndian)
  return valid >= 1 && valid <= bits ? valid : bits
}

/**
 * Channels and container from the three fields that tell of them: channel count, block size and byte rate. Two that
 * agree outvote the third; `null` when no two do. Some writers put 24 bits into four bytes and say so by the block alone.
 */
function blockOf(
  chunk: DataView,
  littleEndian: boolean,
  kind: 'pcm' | 'float',
  bits: number,
): Pick<WavFormat, 'channels' | 'containerBytes' | 'consistent'> | null {
  const channels = chunk.getUint16(2, littleEndian)
  const blockBytes = chunk.getUint16(12, littleEndian)
  const blockByRate = chunk.getUint32(8, littleEndian) / chunk.getUint32(4, littleEndian)
  const least = Math.ceil(bits / 8)
  const told = blockBytes / channels
  if (told === least) return { channels, containerBytes: least, consistent: true }
  if (blockByRate === channels * least) return { channels, containerBytes: least, consistent: false }
  const wider = kind === 'pcm' && (told === 2 || told === 3 || told === 4) && told > least
  if (wider) return { channels, containerBytes: told, consistent: true }
  if (blockByRate !== blockBytes || blockBytes === 0 || blockBytes % least !== 0) return null
  return { channels: blockBytes / least, containerBytes: least, consistent: false }
}
