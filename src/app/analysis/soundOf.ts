import { packedFormat } from '../../../shared/audio/packedFormat'
import { FormatError } from '../../../shared/base/errors'
import type { Sound } from '../../worker/protocol'

/** Rate to decode at when the file does not tell its own, Hz. */
const USUAL_RATE_HZ = 48_000

/**
 * Kept bytes as the worker takes them: a WAV file as it is, anything else decoded by the browser and marked.
 *
 * @param bytes Handed on or decoded; not to be used afterwards.
 * @throws {FormatError} the browser cannot decode it.
 */
export async function soundOf(bytes: ArrayBuffer, file: string): Promise<Sound> {
  const packed = packedFormat(new Uint8Array(bytes))
  if (packed === null) return { wav: bytes }
  const sampleRateHz = packed.sampleRateHz ?? USUAL_RATE_HZ
  try {
    const audio = await new OfflineAudioContext(1, 1, sampleRateHz).decodeAudioData(bytes)
    return {
      decoded: {
        channels: Array.from({ length: audio.numberOfChannels }, (_, channel) => audio.getChannelData(channel)),
        sampleRateHz: audio.sampleRate,
        encoding: { kind: 'decoded', bits: 32 },
        problems: packed.lossless ? [] : [{ key: 'lossy', severity: 'weak', values: {} }],
      },
    }
  } catch {
    throw new FormatError(file, '', 'this browser cannot decode it; save it as WAV')
  }
}

/** What of a sound is handed over to the worker. */
export function buffersOf(sound: Sound): Transferable[] {
  if ('wav' in sound) return [sound.wav]
  return sound.decoded.channels.map((channel) => channel.buffer as ArrayBuffer)
}
