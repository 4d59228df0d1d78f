import type { Job } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import { readJob } from '../../../shared/job/readJob'
import type { DeletedJob, JobSummary } from '../store/state'
import type { Database, KeptJob } from './database'

/** What the list of jobs shows. */
export function summaryOf({ id, name, changedS, lines }: Job): JobSummary {
  const points = lines.map(
    (line) => new Set(line.sweeps.flatMap((sweep) => sweep.clips.map((clip) => clip.row.point))).size,
  )
  return {
    id,
    name,
    changedS,
    firstLineId: lines[0]?.id ?? null,
    lineCount: lines.length,
    pointCount: points.reduce((sum, count) => sum + count, 0),
  }
}

/** What is in storage: jobs, the last changed first, and deleted ones, the last deleted first. */
export interface JobLists {
  readonly jobs: readonly JobSummary[]
  readonly deletedJobs: readonly DeletedJob[]
}

export async function listJobs(database: Database): Promise<JobLists> {
  const kept = await database.getAll('jobs')
  const byId = (a: JobSummary, b: JobSummary) => (a.id < b.id ? -1 : 1)
  const jobs = kept.filter(({ deletedS }) => deletedS === undefined).map(({ summary }) => summary)
  const deletedJobs = kept.flatMap(({ summary, deletedS }) => (deletedS === undefined ? [] : { ...summary, deletedS }))
  return {
    jobs: jobs.sort((a, b) => b.changedS - a.changedS || byId(a, b)),
    deletedJobs: deletedJobs.sort((a, b) => b.deletedS - a.deletedS || byId(a, b)),
  }
}

/**
 * @param deleted Whether one that was deleted, and can be put back, is meant as well.
 * @returns `null` when there is no such job.
 * @throws {FormatError} this version cannot read it.
 */
export async function loadJob(
  database: Database,
  id: string,
  deleted: 'not deleted' | 'even deleted' = 'not deleted',
): Promise<Job | null> {
  const kept = await database.get('jobs', id)
  if (kept === undefined || (deleted === 'not deleted' && kept.deletedS !== undefined)) return null
  return readJob(kept.json, kept.summary.name)
}

export async function saveJob(database: Database, job: Job): Promise<void> {
  await database.put('jobs', { id: job.id, summary: summaryOf(job), json: jobJson(job) })
}

/** Takes a job out of the list; it stays in storage with its sounds, to be put back. */
export function deleteJob(database: Database, id: string, timeS: number): Promise<void> {
  return changeKept(database, id, (kept) => ({ ...kept, deletedS: timeS }))
}

/** Puts a deleted job back into the list, as it was. */
export function restoreJob(database: Database, id: string): Promise<void> {
  return changeKept(database, id, ({ deletedS: _, ...kept }) => kept)
}

async function changeKept(database: Database, id: string, change: (kept: KeptJob) => KeptJob): Promise<void> {
  const write = database.transaction('jobs', 'readwrite')
  const kept = await write.store.get(id)
  if (kept !== undefined) await write.store.put(change(kept))
  await write.done
}

/** Takes a job out of storage for good, with the sounds that no other job has. */
export async function dropJob(database: Database, id: string): Promise<void> {
  await database.delete('jobs', id)
  await dropUnusedSounds(database, [])
}

/**
 * Takes sounds out of storage that neither a kept job nor one of the jobs given has.
 *
 * @param held Jobs that are open or can come back by undo.
 */
export async function dropUnusedSounds(database: Database, held: readonly Job[]): Promise<void> {
  const kept = await database.getAll('jobs')
  const used = new Set<string>()
  for (const { json } of kept) collectDigests(json, used)
  for (const job of held) collectDigests(jobJson(job), used)
  const write = database.transaction(['sounds', 'evidence'], 'readwrite')
  for (const sha256 of await write.objectStore('sounds').getAllKeys()) {
    if (!used.has(sha256)) await write.objectStore('sounds').delete(sha256)
  }
  for (const key of await write.objectStore('evidence').getAllKeys()) {
    if (!used.has(key.slice(key.indexOf('/') + 1))) await write.objectStore('evidence').delete(key)
  }
  await write.done
}

/** Every digest in a job's JSON, also of a version this program cannot read. */
function collectDigests(value: unknown, into: Set<string>): void {
  if (typeof value !== 'object' || value === null) return
  for (const [key, part] of Object.entries(value)) {
    if (key === 'sha256' && typeof part === 'string') into.add(part)
    else collectDigests(part, into)
  }
}
