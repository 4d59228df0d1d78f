import type { WavLayout } from './wavLayout'

/** One step of an integer of each size. Powers of two: a product with them is as exact as the quotient. */
const STEP_8 = 2 ** -7
const STEP_16 = 2 ** -15
const STEP_32 = 2 ** -31

/**
 * The samples of one channel, full scale ±1.
 *
 * Integers are divided by 2^(bits − 1), which up to 24 bits a Float32 holds exactly. Floats are taken as they are; what
 * is not finite, or too big for a Float32, becomes 0 and is counted.
 *
 * @param bytes The whole file, laid out as `layout` says.
 * @param channel 0 to channels − 1.
 */
export function decodeSamples(
  bytes: Uint8Array,
  layout: WavLayout,
  channel: number,
): { samples: Float32Array; notFinite: number } {
  const { containerBytes, channels, kind } = layout.format
  const samples = new Float32Array(layout.frames)
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const stride = containerBytes * channels
  const from = layout.soundAt + channel * containerBytes
  const read = (kind === 'float' ? FLOAT_READERS : INTEGER_READERS)[containerBytes]!
  return { samples, notFinite: read(view, from, stride, layout.littleEndian, samples) }
}

/** Fills `samples` from byte `at` on; returns how many were not finite. One loop a size: asking per sample costs more. */
type Reader = (view: DataView, at: number, stride: number, littleEndian: boolean, samples: Float32Array) => number

const readUnsigned8: Reader = (view, at, stride, _, samples) => {
  for (let i = 0, byte = at; i < samples.length; i++, byte += stride) samples[i] = (view.getUint8(byte) - 128) * STEP_8
  return 0
}

const read16: Reader = (view, at, stride, littleEndian, samples) => {
  for (let i = 0, byte = at; i < samples.length; i++, byte += stride) {
    samples[i] = view.getInt16(byte, littleEndian) * STEP_16
  }
  return 0
}

const read24: Reader = (view, at, stride, littleEndian, samples) => {
  const low = littleEndian ? 0 : 2
  for (let i = 0, byte = at; i < samples.length; i++, byte += stride) {
    const upper = (view.getUint8(byte + 2 - low) << 24) | (view.getUint8(byte + 1) << 16)
    samples[i] = (upper | (view.getUint8(byte + low) << 8)) * STEP_32
  }
  return 0
}

const read32: Reader = (view, at, stride, littleEndian, samples) => {
  for (let i = 0, byte = at; i < samples.length; i++, byte += stride) {
    samples[i] = view.getInt32(byte, littleEndian) * STEP_32
  }
  return 0
}

const readFloat32: Reader = (view, at, stride, littleEndian, samples) => {
  let notFinite = 0
  for (let i = 0, byte = at; i < samples.length; i++, byte += stride) {
    const sample = view.getFloat32(byte, littleEndian)
    if (sample - sample === 0) samples[i] = sample
    else notFinite++
  }
  return notFinite
}

const readFloat64: Reader = (view, at, stride, littleEndian, samples) => {
  let notFinite = 0
  for (let i = 0, byte = at; i < samples.length; i++, byte += stride) {
    const sample = Math.fround(view.getFloat64(byte, littleEndian))
    if (sample - sample === 0) samples[i] = sample
    else notFinite++
  }
  return notFinite
}

/** By the bytes that a sample takes. */
const INTEGER_READERS: Readonly<Record<number, Reader>> = { 1: readUnsigned8, 2: read16, 3: read24, 4: read32 }
const FLOAT_READERS: Readonly<Record<number, Reader>> = { 4: readFloat32, 8: readFloat64 }
