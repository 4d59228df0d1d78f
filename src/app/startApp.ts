import { FormatError } from '../../shared/base/errors'
import type { Job } from '../../shared/job/job'
import { Analyst } from './analysis/analyst'
import { AnswerKeeper } from './analysis/answerKeeper'
import { Joiner } from './join/joiner'
import { nextTask } from './nextTask'
import { HomeScreen } from './offline/homeScreen'
import { OfflineKeeper } from './offline/offlineKeeper'
import { newJob } from './open/newJob'
import { Opener } from './open/opener'
import { LeftRecordings } from './record/leftRecordings'
import { goTo, readRoute } from './route'
import type { ScreenName } from './screens/screenNames'
import { type Database, isFull, openDatabase } from './storage/database'
import { loadDevice } from './storage/device'
import { deleteJob, dropUnusedSounds, listJobs, loadJob, saveJob } from './storage/jobs'
import { Saver } from './storage/saver'
import { TabLock } from './storage/tabLock'
import { withSession } from './store/changes'
import { tell } from './store/notices'
import { FIRST_STATE } from './store/state'
import { Store } from './store/store'

/** The parts of the program that screens may call. */
export interface App {
  readonly store: Store
  readonly analyst: Analyst
  readonly database: Database
  readonly homeScreen: HomeScreen
  readonly joiner: Joiner
  readonly keeper: AnswerKeeper
  readonly offlineKeeper: OfflineKeeper
  readonly opener: Opener
  readonly saver: Saver
  readonly left: LeftRecordings
  /** Seconds since 1970. */
  readonly nowS: () => number
  /** Makes a job from nothing and shows its line, to be sketched. */
  readonly startJob: () => Promise<void>
  readonly deleteJob: (id: string) => Promise<void>
  /** Takes the right to write from the tab that has it. */
  readonly takeOver: () => Promise<void>
}

/**
 * Reads what is kept, then puts the parts together. Nothing is saved before everything was loaded.
 *
 * @throws when the device keeps nothing (private windows of some browsers).
 */
export async function startApp(): Promise<App> {
  const nowS = () => Date.now() / 1000
  const store = new Store(FIRST_STATE, nowS)
  const homeScreen = new HomeScreen(store) // the browser offers it once, early
  const database = await openDatabase(() =>
    store.update((state) => tell(state, 'page', 'wrong', { key: 'other_tab_old', values: {} })),
  )
  const [device, jobs] = await Promise.all([loadDevice(database, FIRST_STATE.device), listJobs(database)])
  store.update((state) => ({ ...withSession(state, { jobs }), device }))
  await showRouted(store, database)

  const saver = new Saver(store, database)
  const left = new LeftRecordings({ store, database, saver })
  const lock = new TabLock((mayWrite) => {
    const wasReadOnly = store.get().session.readOnly
    void changeRight(store, database, saver, mayWrite)
    if (mayWrite && wasReadOnly) setTimeout(() => void left.find(), HANDED_OVER_MS)
  })
  await lock.start()
  const analyst = new Analyst()
  const keeper = new AnswerKeeper(store, analyst, database)
  const showNewJob = async (job: Job, screen: ScreenName) => {
    await saver.flush()
    await saveJob(database, job)
    const list = await listJobs(database)
    showJob(store, saver, job)
    goTo({ screen, jobId: job.id, lineId: job.lines[0]!.id })
    await nextTask() // the list is left before it grows: nobody sees it, and its first date takes long
    store.update((state) => withSession(state, { jobs: list }))
  }
  const offlineKeeper = new OfflineKeeper(
    store,
    () => performance.now(),
    () => saver.flush(),
  )
  const joiner = new Joiner(store, database)
  const opener = new Opener({
    joiner,
    store,
    analyst,
    database,
    nowS,
    showNewJob: (job) => showNewJob(job, 'place'),
    showLine: (lineId) => goTo({ screen: 'place', jobId: store.get().job!.id, lineId }),
  })
  window.addEventListener('hashchange', () => void followRoute(store, database, saver))
  if (!store.get().session.readOnly) void tidyUp(store, database, left)

  return {
    store,
    analyst,
    database,
    homeScreen,
    joiner,
    keeper,
    offlineKeeper,
    opener,
    saver,
    left,
    nowS,
    startJob: async () => {
      const names = new Set((store.get().session.jobs ?? []).map((job) => job.name))
      try {
        await showNewJob(newJob(nowS(), names), 'line')
      } catch (error) {
        store.update((state) => withSession(state, { saving: { state: 'failed', full: isFull(error) } }))
      }
    },
    deleteJob: async (id) => {
      if (store.get().job?.id === id) showJob(store, saver, null)
      await deleteJob(database, id)
      const list = await listJobs(database)
      store.update((state) => withSession(state, { jobs: list }))
    },
    takeOver: () => lock.takeOver(),
  }
}

/** How long the other tab gets to end what it was recording, ms. Chosen. */
const HANDED_OVER_MS = 1500

/** What a killed page left behind is found, and what nobody has any more is taken out. */
async function tidyUp(store: Store, database: Database, left: LeftRecordings): Promise<void> {
  await left.find().catch(() => undefined) // it is there the next time
  await dropUnusedSounds(database, heldJobs(store)).catch(() => undefined)
}

function heldJobs(store: Store): Job[] {
  const { job, undo, redo } = store.get()
  return [...(job === null ? [] : [job]), ...[...undo, ...redo].map((step) => step.job)]
}

function showJob(store: Store, saver: Saver | null, job: Job | null): void {
  saver?.accept(job)
  store.update((state) => ({ ...withSession(state, { lineId: null, chosenPoint: null }), job, undo: [], redo: [] }))
}

/** Goes where the address says: saves what is open, and loads the other job. */
async function followRoute(store: Store, database: Database, saver: Saver): Promise<void> {
  const { jobId } = readRoute(window.location.hash)
  if (jobId !== null && store.get().job?.id !== jobId) await saver.flush()
  await showRouted(store, database, saver)
}

async function showRouted(store: Store, database: Database, saver: Saver | null = null): Promise<void> {
  const { jobId, lineId } = readRoute(window.location.hash)
  if (jobId === null) return
  if (store.get().job?.id !== jobId) {
    const job = await loadOrTell(store, database, jobId)
    if (readRoute(window.location.hash).jobId !== jobId) return
    if (job === null) return goTo({ screen: 'jobs', jobId: null, lineId: null })
    showJob(store, saver, job)
  }
  store.update((state) => (state.session.lineId === lineId ? state : withSession(state, { lineId, chosenPoint: null })))
}

async function loadOrTell(store: Store, database: Database, jobId: string): Promise<Job | null> {
  try {
    return await loadJob(database, jobId)
  } catch (error) {
    if (!(error instanceof FormatError)) throw error
    store.update((state) => tell(state, 'jobs', 'wrong', { key: 'file_wrong', values: { why: error.message } }))
    return null
  }
}

/** What the other tab has saved in the meantime is what goes on here. */
async function changeRight(store: Store, database: Database, saver: Saver, mayWrite: boolean): Promise<void> {
  const wasReadOnly = store.get().session.readOnly
  if (mayWrite && wasReadOnly) {
    try {
      const { job } = store.get()
      const [jobs, device] = await Promise.all([listJobs(database), loadDevice(database, store.get().device)])
      const fresh = job === null ? null : await loadOrTell(store, database, job.id)
      const { lineId } = store.get().session
      showJob(store, saver, fresh)
      store.update((state) => ({ ...withSession(state, { jobs, lineId }), device }))
    } catch (error) {
      store.update((state) => withSession(state, { saving: { state: 'failed', full: isFull(error) } }))
    }
  }
  store.update((state) => withSession(state, { readOnly: !mayWrite }))
}
