import type { Job } from '../../../shared/job/job'
import type { MergedJob } from '../../../shared/job/merge/mergeJobs'
import type { Database } from '../storage/database'
import { listJobs, loadJob, restoreJob, saveJob } from '../storage/jobs'
import type { Saver } from '../storage/saver'
import { withSession } from '../store/changes'
import type { Store } from '../store/store'

export interface JoinParts {
  readonly store: Store
  readonly database: Database
  readonly saver: Saver
}

/**
 * Joins something to a job of this device and saves it, whether the job is open or not; a deleted one is put back for it.
 *
 * Steps of undo from before do not know what came in and would take it out again, so they go.
 *
 * @returns `null` when no such job is on this device.
 * @throws {FormatError} what comes does not fit the job; nothing is changed then.
 */
export async function joinJob(
  { store, database, saver }: JoinParts,
  jobId: string,
  join: (own: Job) => MergedJob,
): Promise<MergedJob | null> {
  await saver.flush()
  const open = store.get().job
  if (open?.id === jobId) {
    const merged = join(open)
    if (merged.job === open) return merged
    store.update((state) => ({ ...state, job: merged.job, undo: [], redo: [] }))
    await saver.flush()
    return merged
  }
  if ((await database.count('jobs', jobId)) === 0) return null
  const kept = await loadJob(database, jobId, 'even deleted')
  if (kept === null) return null
  const merged = join(kept)
  await restoreJob(database, jobId)
  if (merged.job !== kept) await saveJob(database, merged.job)
  const lists = await listJobs(database)
  store.update((state) => withSession(state, lists))
  return merged
}
