import { createHash } from 'node:crypto'
import { readWav } from '../../shared/audio/readWav'
import type { Problem } from '../../shared/base/problem'
import { printable } from '../../shared/base/shown'
import { heardClip } from '../../shared/evidence/heardClip'
import type { Job } from '../../shared/job/job'
import { type OpenedJobFile, openJobFile } from '../../shared/jobfile/openJobFile'
import { planJobFile } from '../../shared/jobfile/planJobFile'
import type { ShareChoice } from '../../shared/jobfile/sharedJob'
import { writeJobFile } from '../../shared/jobfile/writeJobFile'
import { sentence, wordsOf } from '../../shared/words/sentence'
import { openByteFile, type TemporaryBytes, writeByteFile } from './byteFiles'
import { clearProgress, showProgress, wrapped } from './print'

export const digest = async (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

/**
 * Opens a job file.
 *
 * @param bytes Gets its sounds and photos; `null` to check them only.
 * @throws {CallError} not there. @throws {FormatError} no job file.
 */
export async function openJob(path: string, bytes: TemporaryBytes | null): Promise<OpenedJobFile> {
  const file = openByteFile(path)
  try {
    return await openJobFile(file, path, {
      digest,
      keep: async ({ sha256, bytes: each }) => bytes?.keep(sha256, each),
      onDone: (done, total) => showProgress(`opening: ${done} of ${total} files`),
    })
  } finally {
    clearProgress()
    file.close()
  }
}

export interface PackedFile {
  readonly bytes: number
  readonly problems: readonly Problem[]
}

/** Packs a job whose sounds lie in `bytes`. */
export async function packJob(
  job: Job,
  choice: ShareChoice,
  load: (sha256: string) => Uint8Array | null,
  target: { readonly path: string; readonly force: boolean },
): Promise<PackedFile> {
  try {
    const plan = await planJobFile(job, choice, {
      digest,
      load: async (sha256) => load(sha256),
      rings: async (_, bytes) => heardClip(() => readWav(bytes, '')).evidence?.ringList ?? [],
      onDone: (done, total) => showProgress(`listening: ${done} of ${total} files`),
    })
    const onDone = (done: number, total: number) => showProgress(`packing: ${done} of ${total} files`)
    await writeByteFile(target.path, target.force, writeJobFile(plan, onDone))
    return { bytes: plan.bytes, problems: plan.problems }
  } finally {
    clearProgress()
  }
}

/** What a job holds, in a sentence, and everything that is odd, a line each. */
export function jobText(job: Job, problems: readonly Problem[], width: number): string {
  const clips = job.lines.flatMap((line) => line.sweeps.flatMap((sweep) => sweep.clips))
  const counts = {
    lines: job.lines.length,
    points: new Set(clips.map(({ row }) => row.point)).size,
    clips: clips.length,
    opinions: job.opinions?.length ?? 0,
  }
  const head = sentence('file_holds', { name: job.name === '' ? job.id : job.name, ...counts })
  const odd = problems.map((problem) => {
    const { text, mend } = wordsOf(problem)
    return mend === null ? text : `${text} ${mend}`
  })
  return [head, ...odd].map((line) => wrapped(printable(line, 2000), width, 0)).join('')
}
