import type { Random } from '../base/random'

/** How samples stand in a file that this house writes. */
export type WrittenEncoding = 'pcm16' | 'pcm24' | 'float32'

/** Bytes a sample takes. */
export const ENCODED_BYTES: Readonly<Record<WrittenEncoding, number>> = { pcm16: 2, pcm24: 3, float32: 4 }

/**
 * Writes samples as interleaved little-endian frames.
 *
 * Integers are rounded to the nearest, halves away from zero, so that a clip and its mirror image are written alike,
 * and clamped to what the depth holds (+1 becomes 32 767). No dither unless asked for; then triangular, two steps wide,
 * which makes the rounding error's mean and power independent of the sound. What is not finite is written as 0.
 *
 * @param channels One array a channel, all of one length.
 * @param target Written from its start; at least frames × channels × bytes long.
 * @param dither Source of chance for the dither, or `null` for none; without effect on floats.
 */
export function encodeSamples(
  channels: readonly Float32Array[],
  encoding: WrittenEncoding,
  target: Uint8Array,
  dither: Random | null,
): void {
  const stride = ENCODED_BYTES[encoding] * channels.length
  for (const [index, samples] of channels.entries()) {
    const from = index * ENCODED_BYTES[encoding]
    if (encoding === 'float32') writeFloats(samples, target, from, stride)
    else writeIntegers(samples, encoding === 'pcm16' ? 16 : 24, target, from, stride, dither)
  }
}

function writeFloats(samples: Float32Array, target: Uint8Array, from: number, stride: number): void {
  const view = new DataView(target.buffer, target.byteOffset, target.byteLength)
  const count = samples.length
  for (let i = 0, at = from; i < count; i++, at += stride) {
    const sample = samples[i]!
    view.setFloat32(at, sample - sample === 0 ? sample : 0, true)
  }
}

function writeIntegers(
  samples: Float32Array,
  bits: 16 | 24,
  target: Uint8Array,
  from: number,
  stride: number,
  dither: Random | null,
): void {
  const scale = 2 ** (bits - 1)
  const last = bits / 8 - 1
  const count = samples.length
  for (let i = 0, at = from; i < count; i++, at += stride) {
    const noise = dither === null ? 0 : dither.uniform() - dither.uniform()
    const wanted = samples[i]! * scale + noise
    const away = wanted < 0 ? Math.ceil(wanted - 0.5) : Math.floor(wanted + 0.5)
    const value = away > scale - 1 ? scale - 1 : away < -scale ? -scale : away - away === 0 ? away : 0
    target[at] = value & 0xff
    target[at + 1] = (value >> 8) & 0xff
    if (last === 2) target[at + 2] = (value >> 16) & 0xff
  }
}
