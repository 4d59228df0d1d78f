import type { Clip } from './clip'
import { decodeSamples } from './decodeSamples'
import { audioProblem } from './problems'
import { wavLayout } from './wavLayout'

/**
 * A clip from the bytes of a WAV file that nobody vouches for.
 *
 * Reads RIFF, RIFX, RF64 and BW64 with PCM of 8 to 32 bits or float of 32 or 64, plain or extensible, any number of
 * channels, 8 to 192 kHz. Files that break off, whose header was never filled in or whose header lies are read as far
 * as whole frames go, and the clip says so. Memory is at most the samples as Float32 beside the file itself.
 *
 * @param bytes The whole file; not changed and not kept.
 * @param fileName For the messages only.
 * @returns Every channel at native rate and raw level.
 * @throws {FormatError} what cannot be read, in one line with the mend.
 */
export function readWav(bytes: Uint8Array, fileName: string): Clip {
  const layout = wavLayout(bytes, fileName)
  const { format } = layout
  const decoded = Array.from({ length: format.channels }, (_, channel) => decodeSamples(bytes, layout, channel))
  const count = decoded.reduce((sum, channel) => sum + channel.notFinite, 0)
  return {
    channels: decoded.map((channel) => channel.samples),
    sampleRateHz: format.sampleRateHz,
    encoding: { kind: format.kind, bits: format.bits },
    problems: count > 0 ? [...layout.problems, audioProblem('not_finite', 'weak', { count })] : layout.problems,
  }
}
