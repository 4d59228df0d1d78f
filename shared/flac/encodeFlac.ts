import { BitWriter } from './bitWriter'
import { crc8, crc16 } from './flacCrc'
import { ricePlan, writeResidual } from './riceCoding'

/** Whole numbers as a sound card gives them. */
export interface PlainSound {
  /** One a channel, all as long; 1 to 8 of them. */
  readonly channels: readonly Int32Array[]
  readonly bits: number
  /** Below 2^20. */
  readonly sampleRateHz: number
}

const BLOCK = 4096
const HIGHEST_ORDER = 4

/**
 * A sound without loss as FLAC: fixed predictors of order 0 to 4, residuals by Rice's codes in partitions. No predictor is
 * fitted: of noise from the ground, which is most of what is kept, that would save little.
 *
 * @param blocks Metadata blocks behind the first, each with its type.
 * @see IETF RFC 9639, Free Lossless Audio Codec, sections 8 and 9. [RFC9639]
 */
export function encodeFlac(
  sound: PlainSound,
  blocks: readonly { readonly type: number; readonly content: Uint8Array }[],
): Uint8Array {
  const { channels, bits } = sound
  const frames = channels[0]!.length
  const out = new BitWriter(Math.ceil((frames * channels.length * bits) / 8))
  out.writeBytes(Uint8Array.of(0x66, 0x4c, 0x61, 0x43))
  writeStreamInfo(out, sound, blocks.length === 0)
  for (const [i, { type, content }] of blocks.entries()) {
    out.write(Number(i === blocks.length - 1), 1)
    out.write(type, 7)
    out.write(content.length, 24)
    out.writeBytes(content)
  }
  for (let at = 0, number = 0; at < frames; at += BLOCK, number++) {
    const to = Math.min(frames, at + BLOCK)
    writeFrame(
      out,
      channels.map((samples) => samples.subarray(at, to)),
      bits,
      number,
    )
  }
  return out.from(0).slice()
}

function writeStreamInfo(out: BitWriter, { channels, bits, sampleRateHz }: PlainSound, isLast: boolean): void {
  const frames = channels[0]!.length
  out.write(Number(isLast), 1)
  out.write(0, 7)
  out.write(34, 24)
  out.write(BLOCK, 16)
  out.write(BLOCK, 16)
  out.write(0, 24) // sizes of frames: not told
  out.write(0, 24)
  out.write(sampleRateHz, 20)
  out.write(channels.length - 1, 3)
  out.write(bits - 1, 5)
  out.write(Math.floor(frames / 2 ** 32), 4)
  out.write(frames, 32)
  out.writeBytes(new Uint8Array(16)) // its digest: not told, the file that it is packed in has one
}

function writeFrame(out: BitWriter, channels: readonly Int32Array[], bits: number, number: number): void {
  const start = out.length
  const size = channels[0]!.length
  out.write(0xfff8, 16)
  out.write(size === BLOCK ? 0b1100 : 0b0111, 4)
  out.write(0, 4) // the rate, and below the bits of a sample: as the stream says
  out.write(channels.length - 1, 4)
  out.write(0, 4)
  writeNumber(out, number)
  if (size !== BLOCK) out.write(size - 1, 16)
  out.write(crc8(out.from(start)), 8)
  for (const samples of channels) writeSubframe(out, samples, bits)
  out.align()
  out.write(crc16(out.from(start)), 16)
}

/** As UTF-8 codes a letter, up to 2^31. */
function writeNumber(out: BitWriter, number: number): void {
  if (number < 0x80) {
    out.write(number, 8)
    return
  }
  let more = 1
  while (number >= 2 ** (5 * more + 6)) more++
  const mark = (0xff << (7 - more)) & 0xff
  out.write(mark | Math.floor(number / 2 ** (6 * more)), 8)
  for (let i = more - 1; i >= 0; i--) out.write(0x80 | (Math.floor(number / 2 ** (6 * i)) & 0x3f), 8)
}

function writeSubframe(out: BitWriter, samples: Int32Array, bits: number): void {
  if (samples.every((sample) => sample === samples[0])) {
    out.write(0, 8)
    out.write(samples[0]!, bits)
    return
  }
  const { order, residual } = bestPrediction(samples)
  const plan = ricePlan(residual, samples.length, order)
  if (plan.bits + order * bits >= samples.length * bits) {
    out.write(0b00000010, 8)
    for (const sample of samples) out.write(sample, bits)
    return
  }
  out.write((0b001000 | order) << 1, 8)
  for (let i = 0; i < order; i++) out.write(samples[i]!, bits)
  writeResidual(out, residual, samples.length, order, plan)
}

/** The fixed predictor that leaves least; its residual begins behind the samples that it needs. */
function bestPrediction(samples: Int32Array): { readonly order: number; readonly residual: Int32Array } {
  let best = { order: 0, residual: samples, sum: sumOf(samples) }
  let before = samples
  for (let order = 1; order <= Math.min(HIGHEST_ORDER, samples.length - 1); order++) {
    const residual = new Int32Array(before.length - 1)
    for (let i = 0; i < residual.length; i++) residual[i] = before[i + 1]! - before[i]!
    const sum = sumOf(residual)
    if (sum < best.sum) best = { order, residual, sum }
    before = residual
  }
  return best
}

function sumOf(values: Int32Array): number {
  let sum = 0
  for (const value of values) sum += Math.abs(value)
  return sum
}
