import { FormatError } from '../../../shared/base/errors'
import { printable } from '../../../shared/base/shown'
import type { Job } from '../../../shared/job/job'
import { type MergedJob, mergeJobs } from '../../../shared/job/merge/mergeJobs'
import type { OpenedJobFile } from '../../../shared/jobfile/openJobFile'
import { readOpinionFile } from '../../../shared/opinion/opinionFile'
import { withOpinions } from '../../../shared/opinion/withOpinions'
import type { Keyed } from '../../../shared/words/sentence'
import { Analyst, isAborted } from '../analysis/analyst'
import { beginBlind } from '../review/reviews'
import { isFull } from '../storage/database'
import { listJobs, loadJob, saveJob } from '../storage/jobs'
import { keepSound } from '../storage/sounds'
import { withSession } from '../store/changes'
import { tell } from '../store/notices'
import type { Notice, Opening } from '../store/state'
import { type JoinParts, joinJob } from './joinJob'

export interface TakingIn extends JoinParts {
  readonly signal: AbortSignal
  readonly show: (opening: Opening) => void
  /** Keeps a new job and shows it, to be heard. */
  readonly showNewJob: (job: Job) => Promise<void>
}

/** A text of a thousand opinions, each with a thousand remarks, stays below. */
const MOST_OPINION_BYTES = 16e6

/** Troubles of a file that are told one by one. Chosen: more are not read. */
const MOST_TOLD = 5

/**
 * Takes in job files and files of opinions, one after the other. One that is wrong is told of and changes nothing; the
 * others come in all the same.
 *
 * A job that this device does not have is kept, to be heard blind; one that it has takes what is new.
 *
 * @returns Zips that hold no bag: they may hold a sweep folder.
 */
export async function takeIn(files: readonly File[], parts: TakingIn): Promise<File[]> {
  const left: File[] = []
  const fresh: Job[] = []
  const worker = new Analyst() // of its own: it ends with the opening, whatever a file does to it
  try {
    // Opinions come after the jobs that they may be of.
    const jobsFirst = [...files].sort((a, b) => Number(isOpinions(a)) - Number(isOpinions(b)))
    for (const file of jobsFirst) {
      const came = await takenIn(file, worker, parts)
      if (came === 'no bag') left.push(file)
      else if (came !== null) fresh.push(came)
    }
  } finally {
    worker.close()
  }
  const [only, ...others] = fresh
  if (only !== undefined && others.length === 0 && only.lines.length > 0) await showIt(only, parts)
  else for (const { id, name } of fresh) say(parts, 'good', { key: 'came_new', values: { name, file: id } })
  return left
}

const isOpinions = ({ name }: File) => /\.json$/i.test(name)

/** @returns A job that was not here before; `null` for what joined one, or was wrong. */
async function takenIn(file: File, worker: Analyst, parts: TakingIn): Promise<Job | 'no bag' | null> {
  const { store, signal } = parts
  const name = printable(file.name)
  try {
    if (isOpinions(file)) {
      await takeOpinions(file, parts)
      return null
    }
    const opened = await openedFile(file, worker, parts)
    if (opened === null) return 'no bag'
    const merged = await joinJob(parts, opened.job.id, (own) => mergeJobs(own, opened.job, name))
    tellOpened(parts, name, opened)
    if (merged === null) return await keepFresh(opened.job, parts)
    say(parts, 'good', joinedWords(name, merged))
    return null
  } catch (error) {
    if (isAborted(error) || signal.aborted) throw error
    store.update((state) => tell(state, 'page', 'wrong', troubleOf(error, name)))
    return null
  }
}

async function openedFile(file: File, worker: Analyst, parts: TakingIn): Promise<OpenedJobFile | null> {
  const { database, signal, show } = parts
  const name = printable(file.name)
  show({ stage: 'unpacking', name, done: 0, total: 0 })
  let keeping: Promise<unknown> = Promise.resolve()
  const opened = await worker.call(
    'openJobFile',
    { file, name },
    {
      signal,
      onPart: (part) => {
        if ('done' in part) return show({ stage: 'unpacking', name, ...part })
        // One after the other: a browser keeps on disk what waits.
        keeping = keeping.then(() => keepSound(database, part.bytes))
        keeping.catch(() => undefined) // it is told below
      },
    },
  )
  await keeping
  signal.throwIfAborted()
  return opened
}

async function takeOpinions(file: File, parts: TakingIn): Promise<void> {
  const name = printable(file.name)
  if (file.size > MOST_OPINION_BYTES) throw new FormatError(name, '', 'is far too large for opinions')
  const { jobId, opinions } = readOpinionFile(await file.text(), name)
  const merged = await joinJob(parts, jobId, (own) => withOpinions(own, opinions, name))
  if (merged === null)
    throw new FormatError(name, '', 'holds opinions of a job that is not here; open its job file first')
  say(parts, 'good', joinedWords(name, merged))
}

function joinedWords(file: string, { job, newOpinions, newClips, newApart }: MergedJob): Keyed {
  const nothing = newOpinions + newClips + newApart === 0
  const values = { file, name: job.name, opinions: newOpinions, clips: newClips, differences: newApart }
  return { key: nothing ? 'came_nothing_new' : 'came_and_joined', values }
}

function tellOpened(parts: TakingIn, file: string, { problems, points, withoutCustomer }: OpenedJobFile): void {
  for (const { key, values } of problems.slice(0, MOST_TOLD)) say(parts, 'odd', { key, values: { ...values } })
  if (problems.length > MOST_TOLD)
    say(parts, 'odd', { key: 'bag_more', values: { count: problems.length - MOST_TOLD } })
  if (points !== null) say(parts, 'odd', { key: 'came_some_points', values: { file, points: points.join(', ') } })
  if (withoutCustomer) say(parts, 'odd', { key: 'came_without_customer', values: { file } })
}

function say({ store }: TakingIn, severity: Notice['severity'], words: Keyed): void {
  store.update((state) => tell(state, 'page', severity, words))
}

/** Kept at once: another file that is opened with it may belong to it. */
async function keepFresh(job: Job, parts: TakingIn): Promise<Job> {
  const { store, database } = parts
  await beginBlind(parts, job)
  await saveJob(database, job)
  const lists = await listJobs(database)
  store.update((state) => withSession(state, lists))
  return job
}

/** With what joined it since. */
async function showIt({ id }: Job, { database, showNewJob }: TakingIn): Promise<void> {
  const job = await loadJob(database, id)
  if (job !== null) await showNewJob(job)
}

function troubleOf(error: unknown, file: string): Keyed {
  if (error instanceof FormatError) return { key: 'file_wrong', values: { file, why: error.message } }
  if (isFull(error)) return { key: 'device_full', values: { file } }
  return { key: 'open_failed', values: { file, why: error instanceof Error ? error.message : String(error) } }
}
