import { readWav } from '../../shared/audio/readWav'
import { heardClip } from '../../shared/evidence/heardClip'
import { planJobFile } from '../../shared/jobfile/planJobFile'
import { writeJobFile } from '../../shared/jobfile/writeJobFile'
import { digestOf } from './digestOf'
import type { JobToPack, PackedJob } from './protocol'

/**
 * Packs a job: the same job, choice and rings give the same bytes as the command line.
 *
 * @param hand Called with how many files are done, of both passes: the first reads, the second writes.
 */
export async function packJob(
  { job, choice, bytes, rings }: JobToPack,
  hand: (part: { readonly done: number; readonly total: number }) => void,
): Promise<PackedJob> {
  const plan = await planJobFile(job, choice, {
    digest: digestOf,
    load: async (sha256) => {
      const blob = bytes.get(sha256)
      return blob === undefined ? null : new Uint8Array(await blob.arrayBuffer())
    },
    rings: async (sha256, asItCame) =>
      rings.get(sha256) ?? heardClip(() => readWav(asItCame, '')).evidence?.ringList ?? [],
    onDone: (done, total) => hand({ done, total: 2 * total }),
  })
  const pieces: Blob[] = []
  const onDone = (done: number, total: number) => hand({ done: total + done, total: 2 * total })
  for await (const piece of writeJobFile(plan, onDone)) {
    pieces.push(new Blob([piece as Uint8Array<ArrayBuffer>])) // a browser may keep it on disk
  }
  return { zip: new Blob(pieces, { type: 'application/zip' }), name: plan.name, problems: plan.problems }
}
