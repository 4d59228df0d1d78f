import type { HeardClip } from '../../../shared/evidence/heardClip'
import type { Job } from '../../../shared/job/job'
import { planJobFile } from '../../../shared/jobfile/planJobFile'
import { SHARE_ALL } from '../../../shared/jobfile/sharedJob'
import { writeJobFile } from '../../../shared/jobfile/writeJobFile'
import { digestOf } from '../storage/digestOf'
import { loadSound } from '../storage/sounds'
import type { PackedSweepFolder, Packing } from './packSweepFolder'

/**
 * The whole job as a job file: the command line and any other copy of this page open it.
 *
 * @param heard What was heard in its clips, for the marks at their rings.
 */
export async function packJobFile(
  job: Job,
  heard: Readonly<Record<string, HeardClip>>,
  { database, signal, onDone }: Pick<Packing, 'database' | 'signal' | 'onDone'>,
): Promise<PackedSweepFolder> {
  const plan = await planJobFile(job, SHARE_ALL, {
    digest: (bytes) => digestOf(bytes.slice().buffer),
    load: async (sha256) => {
      signal.throwIfAborted()
      const bytes = await loadSound(database, sha256)
      return bytes === null ? null : new Uint8Array(bytes)
    },
    rings: async (digest) => heard[digest]?.evidence?.ringList ?? [],
    onDone,
  })
  const pieces: BlobPart[] = []
  for await (const piece of writeJobFile(plan, onDone)) {
    signal.throwIfAborted()
    pieces.push(piece.slice().buffer)
  }
  const zip = new Blob(pieces, { type: 'application/zip' })
  return { zip, name: plan.name, lostCount: plan.problems.length, notWavCount: 0 }
}
