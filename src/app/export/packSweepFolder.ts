import type { Job, JobLine } from '../../../shared/job/job'
import { sweepFolder } from '../../../shared/job/sweepFolder'
import type { FileToPack } from '../../worker/protocol'
import type { Analyst } from '../analysis/analyst'
import type { Database } from '../storage/database'
import { soundBlob } from '../storage/sounds'

export interface PackedSweepFolder {
  readonly zip: Blob
  /** Of the folder in the zip. */
  readonly name: string
  /** Clips that the sheet names and that are no longer on this device. */
  readonly lostCount: number
  /** Clips that the command line cannot read: it reads WAV only. */
  readonly notWavCount: number
}

export interface Packing {
  readonly database: Database
  readonly analyst: Analyst
  readonly signal: AbortSignal
  readonly onDone: (done: number, total: number) => void
}

/**
 * A line with its sweeps as a zip of one folder: the sheet, the line, and every clip with the very bytes that are kept.
 *
 * @returns `null` for a line without a clip.
 */
export async function packSweepFolder(
  job: Job,
  line: JobLine,
  { database, analyst, signal, onDone }: Packing,
): Promise<PackedSweepFolder | null> {
  const folder = sweepFolder(line)
  if (folder === null) return null
  const name = folderName(job.lines.length > 1 ? `${job.name} ${line.name}` : job.name)
  const text = (path: string, content: string): FileToPack => ({ path: `${name}/${path}`, bytes: new Blob([content]) })
  const files = [text('sweep.csv', folder.sheet), text('line.json', folder.line)]
  for (const { path, sound } of folder.files) {
    signal.throwIfAborted()
    const bytes = await soundBlob(database, sound.sha256)
    if (bytes !== null) files.push({ path: `${name}/${path}`, bytes })
  }
  onDone(0, files.length)
  const zip = await analyst.call('zip', { files }, { signal, onPart: ({ done }) => onDone(done, files.length) })
  return {
    zip,
    name,
    lostCount: folder.files.length + 2 - files.length,
    notWavCount: folder.files.filter(({ path }) => !/\.wav$/i.test(path)).length,
  }
}

/** A name that every disk takes: letters, digits and single hyphens. */
export function folderName(name: string): string {
  const plain = name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '')
  return [...plain].slice(0, 60).join('') || 'sweep'
}
