import type { Ring } from '../../../shared/bubbles/ring'
import type { HeardClip } from '../../../shared/evidence/heardClip'
import { digestsOf } from '../../../shared/job/digestsOf'
import type { Job } from '../../../shared/job/job'
import { type ShareChoice, sharedJob } from '../../../shared/jobfile/sharedJob'
import type { PackedJob } from '../../worker/protocol'
import type { Analyst } from '../analysis/analyst'
import type { Database } from '../storage/database'
import { soundBlob } from '../storage/sounds'

export interface PackParts {
  readonly analyst: Analyst
  readonly database: Database
  readonly signal: AbortSignal
  readonly onDone: (done: number, total: number) => void
}

/**
 * A job as a job file: the command line and any other copy of this page open it.
 *
 * @param heard What was heard in its clips so far, for the marks at their rings.
 */
export async function packJob(
  job: Job,
  choice: ShareChoice,
  heard: Readonly<Record<string, HeardClip>>,
  { analyst, database, signal, onDone }: PackParts,
): Promise<PackedJob> {
  const { sounds, photos } = digestsOf(sharedJob(job, choice))
  const bytes = new Map<string, Blob>()
  const rings = new Map<string, readonly Ring[]>()
  for (const digest of [...sounds.map((sound) => sound.sha256), ...photos]) {
    const blob = await soundBlob(database, digest)
    if (blob !== null) bytes.set(digest, blob)
    const found = heard[digest]?.evidence?.ringList
    if (found !== undefined) rings.set(digest, found)
  }
  signal.throwIfAborted()
  return analyst.call(
    'packJob',
    { job, choice, bytes, rings },
    { signal, onPart: ({ done, total }) => onDone(done, total) },
  )
}
