import type { Job } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import { readJob } from '../../../shared/job/readJob'
import type { JobSummary } from '../store/state'
import type { Database } from './database'

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

/** All kept jobs, the last changed first. */
export async function listJobs(database: Database): Promise<JobSummary[]> {
  const kept = await database.getAll('jobs')
  return kept.map(({ summary }) => summary).sort((a, b) => b.changedS - a.changedS || (a.id < b.id ? -1 : 1))
}

/** @returns `null` when there is no such job. @throws {FormatError} what is kept cannot be read by this version. */
export async function loadJob(database: Database, id: string): Promise<Job | null> {
  const kept = await database.get('jobs', id)
  return kept === undefined ? null : readJob(kept.json, kept.summary.name)
}

export async function saveJob(database: Database, job: Job): Promise<void> {
  await database.put('jobs', { id: job.id, summary: summaryOf(job), json: jobJson(job) })
}

/** Takes a job out of storage, and the sounds that no other job has. */
export async function deleteJob(database: Database, id: string): Promise<void> {
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
