import type { Problem } from '../base/problem'
import type { Clip } from './clip'
import { wavLayout } from './wavLayout'

/** A clip's outline. */
export interface WavHeader {
  readonly durationS: number
  readonly frames: number
  readonly channels: number
  readonly sampleRateHz: number
  readonly encoding: Clip['encoding']
  readonly problems: readonly Problem[]
}

/**
 * What a WAV file holds, without decoding a sample; the same lengths, problems and errors as `readWav`.
 *
 * @param bytes The whole file (its true length settles what the header may claim).
 * @throws {FormatError} as `readWav`.
 */
export function readWavHeader(bytes: Uint8Array, fileName: string): WavHeader {
  const { format, frames, problems } = wavLayout(bytes, fileName)
  return {
    durationS: frames / format.sampleRateHz,
    frames,
    channels: format.channels,
    sampleRateHz: format.sampleRateHz,
    encoding: { kind: format.kind, bits: format.bits },
    problems,
  }
}
