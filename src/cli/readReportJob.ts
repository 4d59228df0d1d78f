import { createHash } from 'node:crypto'
import { dirname, join } from 'node:path'
import type { Problem } from '../../shared/base/problem'
import type { Job } from '../../shared/job/job'
import { readJob } from '../../shared/job/readJob'
import type { TemporaryBytes } from './byteFiles'
import { filesBelow, isFolder, openClip, readText } from './files'
import { openJob } from './jobFiles'

/** A job to report on, and the bytes that lie with it. */
export interface ReportJob {
  readonly job: Job
  /** Bytes of a clip or photo by its digest; `null` when they are not there. */
  readonly load: (sha256: string) => Uint8Array | null
  readonly problems: readonly Problem[]
}

/**
 * Opens a job: a job file, a folder with a `job.json` in it as `yardhark open` writes it, or a `job.json` itself.
 *
 * @param bytes For what lies in a job file.
 * @throws {CallError} not there. @throws {FormatError} no job.
 */
export async function readReportJob(path: string, bytes: TemporaryBytes): Promise<ReportJob> {
  const isJson = /\.json$/i.test(path)
  if (!isFolder(path) && !isJson) {
    const { job, problems } = await openJob(path, bytes)
    return { job, problems, load: (sha256) => bytes.load(sha256) }
  }
  const file = isJson ? path : join(path, 'job.json')
  const job = readJob(readText(file, 'job'), file)
  return { job, problems: [], load: loaderOf(dirname(file)) }
}

/** Files of a folder are told by what is in them, whatever they are called. Looked through when the first is asked for. */
function loaderOf(folder: string): ReportJob['load'] {
  let byDigest: Map<string, string> | null = null
  return (sha256) => {
    byDigest ??= new Map(
      filesBelow(folder).flatMap((file) => {
        const opened = openClip(folder, file)
        return 'bytes' in opened ? [[createHash('sha256').update(opened.bytes).digest('hex'), file] as const] : []
      }),
    )
    const file = byDigest.get(sha256)
    const opened = file === undefined ? null : openClip(folder, file)
    return opened !== null && 'bytes' in opened ? opened.bytes : null
  }
}
