import { FLACDecoder } from '@wasm-audio-decoders/flac'
import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis'

export interface MonoSound {
  /** Mean of the channels, full scale ±1. */
  readonly samples: Float32Array
  readonly sampleRateHz: number
}

/**
 * Decodes Ogg Vorbis, FLAC and plain PCM WAV to mono at the native rate and level.
 *
 * @param name Only its ending counts: `.ogg`, `.flac`, `.wav`.
 */
export async function decode(name: string, bytes: Uint8Array): Promise<MonoSound> {
  if (name.endsWith('.wav')) return decodeWav(name, bytes)
  const decoder = name.endsWith('.flac') ? new FLACDecoder() : new OggVorbisDecoder()
  await decoder.ready
  try {
    const { channelData, sampleRate, samplesDecoded } = await decoder.decodeFile(bytes)
    if (samplesDecoded === 0) throw new Error(`${name}: nothing could be decoded`)
    return { samples: mixDown(channelData), sampleRateHz: sampleRate }
  } finally {
    decoder.free()
  }
}

/** Own few lines, so that these fixtures do not lean on the reader they may one day test. */
function decodeWav(name: string, bytes: Uint8Array): MonoSound {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let channels = 0
  let sampleRateHz = 0
  let bits = 0
  for (let at = 12; at + 8 <= bytes.length; ) {
    const id = String.fromCharCode(...bytes.subarray(at, at + 4))
    const size = view.getUint32(at + 4, true)
    if (id === 'fmt ') {
      channels = view.getUint16(at + 10, true)
      sampleRateHz = view.getUint32(at + 12, true)
      bits = view.getUint16(at + 22, true)
    }
    if (id === 'data') {
      if (bits !== 16 && bits !== 8) throw new Error(`${name}: ${bits} bits are not read here`)
      const read =
        bits === 16 ? (i: number) => view.getInt16(i, true) / 32768 : (i: number) => view.getUint8(i) / 128 - 1
      const step = bits / 8
      const end = Math.min(size, bytes.length - at - 8)
      const frames = Math.floor(end / (step * channels))
      const split = Array.from({ length: channels }, (_, c) =>
        Float32Array.from({ length: frames }, (_, i) => read(at + 8 + (i * channels + c) * step)),
      )
      return { samples: mixDown(split), sampleRateHz }
    }
    at += 8 + size + (size % 2)
  }
  throw new Error(`${name}: no samples found`)
}

function mixDown(channels: readonly Float32Array[]): Float32Array {
  if (channels.length === 1) return Float32Array.from(channels[0]!)
  return Float32Array.from(channels[0]!, (_, i) => channels.reduce((sum, c) => sum + c[i]!, 0) / channels.length)
}
