import { writeWav } from '../../../shared/audio/writeWav'
import type { KeptSound } from '../../../shared/job/job'
import { joinChunks } from '../../../shared/record/joinChunks'
import { losslessClip } from '../../../shared/record/losslessClip'
import type { Database, KeptRecording } from './database'
import { chunksOf } from './recordings'
import { keepSound } from './sounds'

export interface AssembledRecording {
  readonly sound: KeptSound
  readonly keptBits: 16 | 24 | 32
  readonly durationS: number
}

/**
 * Joins the chunks of a recording to a WAV file, and keeps that among the sounds. The chunks stay until `forgetRecording`.
 *
 * @returns `null` when nothing was recorded.
 * @throws what the device throws when it has no room left; the chunks are still there then.
 */
export async function assembleRecording(
  database: Database,
  { id, about }: Pick<KeptRecording, 'id' | 'about'>,
): Promise<AssembledRecording | null> {
  const channels = joinChunks(await chunksOf(database, id))
  const frames = channels[0]?.length ?? 0
  if (frames === 0) return null
  const { clip, encoding, bits } = losslessClip(channels, about.sampleRateHz)
  const bytes = writeWav(clip, { encoding }) as Uint8Array<ArrayBuffer>
  const sound = await keepSound(database, new Blob([bytes], { type: 'audio/wav' }))
  return { sound, keptBits: bits, durationS: frames / about.sampleRateHz }
}
