import { BitReader, BrokenStream } from './bitReader'
import type { PlainSound } from './encodeFlac'
import { crc16 } from './flacCrc'

/** A metadata block behind the first. */
export interface FlacBlock {
  readonly type: number
  readonly content: Uint8Array
}

export interface DecodedFlac extends PlainSound {
  readonly blocks: readonly FlacBlock[]
}

/** Above 24 bits a side channel does not fit our integers. */
const MOST_BITS = 24
const MOST_BLOCKS = 2000

/**
 * Takes a FLAC stream apart that nobody vouches for: every subframe and every channel layout of the format, up to 24 bits.
 *
 * @param mostSamples Of all channels together; nothing is allocated by a number from the stream beyond it.
 * @returns `null` for what is no such stream, breaks off, or holds more.
 * @see IETF RFC 9639, sections 8 and 9. [RFC9639]
 */
export function decodeFlac(bytes: Uint8Array, mostSamples: number): DecodedFlac | null {
  try {
    return decoded(bytes, mostSamples)
  } catch (error) {
    if (error instanceof BrokenStream) return null
    throw error
  }
}

function decoded(bytes: Uint8Array, mostSamples: number): DecodedFlac {
  const reader = new BitReader(bytes, 0)
  check(reader.read(32) === 0x664c6143, 'it does not begin as one')
  let info: StreamInfo | null = null
  const blocks: FlacBlock[] = []
  for (let isLast = false; !isLast; ) {
    isLast = reader.read(1) === 1
    const type = reader.read(7)
    const length = reader.read(24)
    const at = reader.place
    check(at + length <= bytes.length && blocks.length < MOST_BLOCKS, 'it breaks off')
    const content = bytes.slice(at, at + length)
    if (info === null) {
      check(type === 0 && length === 34, 'it does not say what it is')
      info = streamInfo(content)
    } else blocks.push({ type, content })
    for (let i = 0; i < length; i++) reader.read(8)
  }
  const { channelCount, bits, sampleRateHz, frames } = info!
  check(bits <= MOST_BITS && frames * channelCount <= mostSamples, 'it holds too much')
  const channels = Array.from({ length: channelCount }, () => new Int32Array(frames))
  for (let at = 0; at < frames; ) at += readFrame(reader, bytes, channels, at, bits)
  return { channels, bits, sampleRateHz, blocks }
}

interface StreamInfo {
  readonly sampleRateHz: number
  readonly channelCount: number
  readonly bits: number
  readonly frames: number
}

function streamInfo(content: Uint8Array): StreamInfo {
  const reader = new BitReader(content, 10)
  const sampleRateHz = reader.read(20)
  const channelCount = reader.read(3) + 1
  const bits = reader.read(5) + 1
  return { sampleRateHz, channelCount, bits, frames: reader.read(4) * 2 ** 32 + reader.read(32) }
}

const BLOCK_SIZES: Readonly<Record<number, number>> = { 1: 192, 2: 576, 3: 1152, 4: 2304, 5: 4608 }

/** @returns How many samples a channel it holds. */
function readFrame(reader: BitReader, bytes: Uint8Array, channels: Int32Array[], at: number, bits: number): number {
  const start = reader.place
  check(reader.read(15) === 0x7ffc, 'a frame does not begin as one')
  reader.read(1)
  const sizeCode = reader.read(4)
  const rateCode = reader.read(4)
  const layout = reader.read(4)
  reader.read(4)
  skipNumber(reader)
  const size = blockSize(reader, sizeCode)
  if (rateCode === 12) reader.read(8)
  if (rateCode === 13 || rateCode === 14) reader.read(16)
  reader.read(8) // its own check is part of the frame's
  check(size > 0 && at + size <= channels[0]!.length, 'a frame is longer than the stream')
  check(layout < 8 ? layout + 1 === channels.length : layout <= 10 && channels.length === 2, 'its channels change')
  for (const [i, samples] of channels.entries()) {
    const isSide = layout === 9 ? i === 0 : (layout === 8 || layout === 10) && i === 1
    readSubframe(reader, samples.subarray(at, at + size), bits + Number(isSide))
  }
  if (layout >= 8) unmix(channels[0]!.subarray(at, at + size), channels[1]!.subarray(at, at + size), layout)
  reader.align()
  const end = reader.place
  check(reader.read(16) === crc16(bytes.subarray(start, end)), 'a frame is damaged')
  return size
}

function skipNumber(reader: BitReader): void {
  const first = reader.read(8)
  for (let mark = 0x40; first & 0x80 && first & mark; mark >>= 1) reader.read(8)
}

function blockSize(reader: BitReader, code: number): number {
  if (code === 6) return reader.read(8) + 1
  if (code === 7) return reader.read(16) + 1
  return code >= 8 ? 2 ** code : (BLOCK_SIZES[code] ?? 0)
}

function readSubframe(reader: BitReader, samples: Int32Array, frameBits: number): void {
  check(reader.read(1) === 0, 'a subframe does not begin as one')
  const type = reader.read(6)
  const wasted = reader.read(1) === 1 ? reader.readUnary(frameBits) + 1 : 0
  const bits = frameBits - wasted
  check(bits > 0, 'a subframe has no bits')
  if (type === 0) samples.fill(reader.readSigned(bits))
  else if (type === 1) for (let i = 0; i < samples.length; i++) samples[i] = reader.readSigned(bits)
  else if (type >= 8 && type <= 12) readFixed(reader, samples, bits, type - 8)
  else if (type >= 32) readFitted(reader, samples, bits, type - 31)
  else throw new BrokenStream('a subframe is of no known kind')
  if (wasted > 0) for (let i = 0; i < samples.length; i++) samples[i] = samples[i]! * 2 ** wasted
}

const FIXED: readonly (readonly number[])[] = [[], [1], [2, -1], [3, -3, 1], [4, -6, 4, -1]]

function readFixed(reader: BitReader, samples: Int32Array, bits: number, order: number): void {
  warmUp(reader, samples, bits, order)
  readResidual(reader, samples, order)
  predict(samples, FIXED[order]!, 0)
}

function readFitted(reader: BitReader, samples: Int32Array, bits: number, order: number): void {
  warmUp(reader, samples, bits, order)
  const precision = reader.read(4) + 1
  check(precision < 16, 'a predictor has no precision')
  const shift = reader.readSigned(5)
  check(shift >= 0, 'a predictor is shifted the wrong way')
  const weights = Array.from({ length: order }, () => reader.readSigned(precision))
  readResidual(reader, samples, order)
  predict(samples, weights, shift)
}

function warmUp(reader: BitReader, samples: Int32Array, bits: number, order: number): void {
  check(order <= samples.length, 'a frame is shorter than its predictor')
  for (let i = 0; i < order; i++) samples[i] = reader.readSigned(bits)
}

/** Sums stay below 2^53, so that numbers hold them. */
function predict(samples: Int32Array, weights: readonly number[], shift: number): void {
  const factor = 2 ** shift
  for (let i = weights.length; i < samples.length; i++) {
    let sum = 0
    for (let k = 0; k < weights.length; k++) sum += weights[k]! * samples[i - 1 - k]!
    samples[i] = samples[i]! + Math.floor(sum / factor)
  }
}

function readResidual(reader: BitReader, samples: Int32Array, order: number): void {
  const method = reader.read(2)
  check(method < 2, 'a residual is of no known kind')
  const parameterBits = method === 0 ? 4 : 5
  const partitionOrder = reader.read(4)
  const size = samples.length / 2 ** partitionOrder
  check(Number.isInteger(size) && size >= order, 'a residual is cut wrong')
  for (let i = 0; i < 2 ** partitionOrder; i++) {
    const parameter = reader.read(parameterBits)
    const isRaw = parameter === 2 ** parameterBits - 1
    const rawBits = isRaw ? reader.read(5) : 0
    for (let at = Math.max(order, i * size); at < (i + 1) * size; at++) {
      samples[at] = isRaw ? reader.readSigned(rawBits) : unfolded(reader, parameter)
    }
  }
}

function unfolded(reader: BitReader, parameter: number): number {
  const folded = reader.readUnary(2 ** 20) * 2 ** parameter + reader.read(parameter)
  return folded % 2 === 0 ? folded / 2 : -(folded + 1) / 2
}

/** Left with the difference (8), the difference with right (9), middle with the difference (10), into left and right. */
function unmix(first: Int32Array, second: Int32Array, layout: number): void {
  for (let i = 0; i < first.length; i++) {
    const [a, b] = [first[i]!, second[i]!]
    if (layout === 8) second[i] = a - b
    else if (layout === 9) first[i] = a + b
    else {
      const twice = 2 * a + (b & 1)
      first[i] = (twice + b) / 2
      second[i] = (twice - b) / 2
    }
  }
}

function check(isRight: boolean, wrong: string): void {
  if (!isRight) throw new BrokenStream(wrong)
}
