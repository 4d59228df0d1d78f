import type { IDBPTransaction } from 'idb'
import { FormatError } from '../../../shared/base/errors'
import type { Job } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import { jobStage } from '../../../shared/job/jobStage'
import { readJob } from '../../../shared/job/readJob'
import type { DeletedJob, JobSummary } from '../store/state'
import { type Database, type KeptJob, keptSummary, type YardharkSchema } from './database'

/** What the list of jobs shows. */
export function summaryOf({ id, name, changedS, lines, opinions = [] }: Job): JobSummary {
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
    stage: jobStage({ lines }),
    opinionCount: opinions.length,
  }
}

/** What is in storage: jobs, the last changed first, and deleted ones, the last deleted first. */
export interface JobLists {
  readonly jobs: readonly JobSummary[]
  readonly deletedJobs: readonly DeletedJob[]
}

export async function listJobs(database: Database): Promise<JobLists> {
  const kept = await database.getAll('summaries')
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
  await put(database, { id: job.id, summary: summaryOf(job), json: jobJson(job) })
}

/**
 * Works out what the list shows of jobs that an older version kept, and did not work out.
 *
 * @returns Whether there was one.
 */
export async function completeSummaries(database: Database): Promise<boolean> {
  const ids = (await database.getAll('summaries')).flatMap(({ id, summary }) => (summary.stage === undefined ? id : []))
  for (const id of ids) {
    const json = (await database.get('jobs', id))?.json
    try {
      const summary = summaryOf(readJob(json, id))
      await changeKept(database, id, (now) => ({ ...now, summary: { ...summary, ...now.summary } }))
    } catch (error) {
      if (!(error instanceof FormatError)) throw error // one that cannot be read says so when it is opened
    }
  }
  return ids.length > 0
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
  const write = database.transaction(['jobs', 'summaries'], 'readwrite')
  const kept = await write.objectStore('jobs').get(id)
  const changed = kept === undefined ? null : change(kept)
  await Promise.all([...(changed === null ? [] : puts(write, changed)), write.done])
}

async function put(database: Database, kept: KeptJob): Promise<void> {
  const write = database.transaction(['jobs', 'summaries'], 'readwrite')
  await Promise.all([...puts(write, kept), write.done])
}

function puts(
  write: IDBPTransaction<YardharkSchema, ('jobs' | 'summaries')[], 'readwrite'>,
  kept: KeptJob,
): Promise<unknown>[] {
  return [write.objectStore('jobs').put(kept), write.objectStore('summaries').put(keptSummary(kept))]
}

/** Takes a job out of storage for good, with the sounds that no other job has. */
export async function dropJob(database: Database, id: string): Promise<void> {
  const write = database.transaction(['jobs', 'summaries'], 'readwrite')
  await Promise.all([write.objectStore('jobs').delete(id), write.objectStore('summaries').delete(id), write.done])
  await dropUnusedSounds(database, [])
}

/**
 * Takes sounds out of storage that neither a kept job nor one of the jobs given has.
 *
 * @param held Jobs that are open or can come back by undo.
 */
export async function dropUnusedSounds(database: Database, held: readonly Job[]): Promise<void> {
  const used = new Set<string>()
  // One job at a time: all of an office would fill a phone.
  const { store } = database.transaction('jobs')
  for (let cursor = await store.openCursor(); cursor !== null; cursor = await cursor.continue()) {
    collectDigests(cursor.value.json, used)
  }
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
