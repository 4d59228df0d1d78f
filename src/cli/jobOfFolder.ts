import { createHash } from 'node:crypto'
import { basename, resolve } from 'node:path'
import type { Problem } from '../../shared/base/problem'
import type { Job, JobClip, JobSweep } from '../../shared/job/job'
import { lineJson } from '../../shared/line/lineJson'
import type { SweepRow } from '../../shared/sweep/sweep'
import { openClip } from './files'
import type { SweepFolder } from './readSweepFolder'

const MOST_NAME = 200 // as the job's reader allows

export interface FolderJob {
  readonly job: Job
  /** Bytes of a clip by its digest. */
  readonly load: (sha256: string) => Uint8Array | null
}

/**
 * A sweep folder as a job, the same one whenever it is made: its ids come from what is in the folder, its times from its
 * clips.
 *
 * @param name `null`: the folder's own.
 */
export function jobOfFolder(folder: string, { rows, line, problems }: SweepFolder, name: string | null): FolderJob {
  const files = new Map<string, string>()
  const clips = rows.map((row) => clipOf(folder, row, files))
  const content = JSON.stringify([lineJson(line), clips.map(({ row, sound }) => [row, sound])])
  const id = (part: string) => `${part}-${createHash('sha256').update(`${part} ${content}`).digest('hex').slice(0, 16)}`
  const times = rows.flatMap(({ timeS }) => timeS ?? [])
  const names = [...new Set(rows.map(({ sweep }) => sweep))]
  const sweeps = names.map(
    (sweep): JobSweep => ({
      id: id(`sweep-${names.indexOf(sweep) + 1}`),
      name: sweep,
      clips: clips.filter(({ row }) => row.sweep === sweep),
      problems: [],
    }),
  )
  const job: Job = {
    id: id('job'),
    name: (name ?? basename(resolve(folder))).slice(0, MOST_NAME),
    createdS: times.reduce((a, b) => Math.min(a, b), times[0] ?? 0),
    changedS: times.reduce((a, b) => Math.max(a, b), times[0] ?? 0),
    lines: [{ id: id('line'), name: '', line, problems, sweeps, confirmations: [] }],
  }
  const load = (sha256: string) => {
    const file = files.get(sha256)
    const opened = file === undefined ? null : openClip(folder, file)
    return opened !== null && 'bytes' in opened ? opened.bytes : null
  }
  return { job, load }
}

function clipOf(folder: string, row: SweepRow, files: Map<string, string>): JobClip {
  const opened = openClip(folder, row.file)
  if ('problem' in opened) return { row, sound: null, problems: [opened.problem as Problem] }
  const sha256 = createHash('sha256').update(opened.bytes).digest('hex')
  files.set(sha256, row.file)
  return { row, sound: { sha256, bytes: opened.bytes.length }, problems: [] }
}
