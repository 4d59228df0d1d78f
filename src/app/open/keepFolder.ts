import type { Problem } from '../../../shared/base/problem'
import { printable } from '../../../shared/base/shown'
import type { JobClip, JobSweep, KeptSound } from '../../../shared/job/job'
import { NOTHING_AGAINST } from '../../../shared/sweep/phoneAccount'
import { phoneProblems } from '../../../shared/sweep/phoneProblems'
import type { SweepRow } from '../../../shared/sweep/sweep'
import { newId } from '../newId'
import type { Database } from '../storage/database'
import { keepSound } from '../storage/sounds'

/** Largest clip that is kept. Chosen: half an hour of 24-bit stereo at 48 kHz is 518 MB. */
const MOST_CLIP_BYTES = 600e6

export interface Keeping {
  readonly database: Database
  readonly signal: AbortSignal
  /** Called with how many clips are kept. */
  readonly onDone: (done: number, total: number) => void
  /** Names of sweeps that are taken already. */
  readonly takenNames: readonly string[]
}

/**
 * Keeps the sounds of a sweep folder, and gives its sweeps.
 *
 * @param rows    As sheet or names tell them.
 * @param files   The folder's files by path.
 * @param problems What is odd in sheet and names; the first sweep carries it.
 * @throws what the device throws when it has no room left; nothing of the job was changed then.
 */
export async function keepFolder(
  rows: readonly SweepRow[],
  files: ReadonlyMap<string, Blob>,
  problems: readonly Problem[],
  { database, signal, onDone, takenNames }: Keeping,
): Promise<JobSweep[]> {
  const paths = [...new Set(rows.map((row) => row.file))]
  const kept = new Map<string, Omit<JobClip, 'row'>>()
  for (const [done, path] of paths.entries()) {
    onDone(done, paths.length)
    signal.throwIfAborted()
    kept.set(path, await keepClip(path, files, database))
  }
  const taken = new Set(takenNames)
  return [...new Set(rows.map((row) => row.sweep))].map((told, i) => {
    const name = freeName(told, taken)
    taken.add(name)
    const own = rows.filter((row) => row.sweep === told)
    const clips = own.map((row) => {
      const { sound, problems } = kept.get(row.file)!
      const told = phoneProblems(row.phone ?? NOTHING_AGAINST)
      return { row: { ...row, sweep: name }, sound, problems: [...told, ...problems] }
    })
    return { id: newId(), name, clips, problems: i === 0 ? problems : [] }
  })
}

async function keepClip(
  path: string,
  files: ReadonlyMap<string, Blob>,
  database: Database,
): Promise<{ sound: KeptSound | null; problems: Problem[] }> {
  const bytes = files.get(path)
  if (bytes === undefined) return { sound: null, problems: [missing(path, [...files.keys()])] }
  if (bytes.size > MOST_CLIP_BYTES) {
    const values = { size_mb: Math.round(bytes.size / 1e6), most_mb: MOST_CLIP_BYTES / 1e6 }
    return { sound: null, problems: [{ key: 'file_too_large', severity: 'spoilt', values }] }
  }
  return { sound: await keepSound(database, bytes), problems: [] }
}

/** A name that differs only in case or ending is most likely the one that was meant. */
function missing(path: string, names: readonly string[]): Problem {
  const stem = (name: string) => name.toLowerCase().replace(/\.\w+$/, '')
  const near = [...names].sort().find((name) => stem(name) === stem(path))
  if (near === undefined) return { key: 'missing_file', severity: 'spoilt', values: {} }
  return { key: 'missing_file_like', severity: 'spoilt', values: { near: printable(near) } }
}

function freeName(told: string, taken: ReadonlySet<string>): string {
  if (!taken.has(told)) return told
  for (let number = 2; ; number++) {
    const name = /^\d+$/.test(told) ? String(number) : `${told} ${number}`
    if (!taken.has(name)) return name
  }
}
