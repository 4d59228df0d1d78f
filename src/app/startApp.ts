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
import { loadDetector } from './storage/detector'
import { loadDevice } from './storage/device'
import {
  completeSummaries,
  deleteJob,
  dropJob,
  dropUnusedSounds,
  listJobs,
  loadJob,
  restoreJob,
  saveJob,
} from './storage/jobs'
import { loadReviews } from './storage/reviews'
import { Saver } from './storage/saver'
import { TabLock } from './storage/tabLock'
import { withSession } from './store/changes'
import { tell } from './store/notices'
import { type AppState, FIRST_STATE } from './store/state'
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
  /** Takes a job out of the list; it can be put back. */
  readonly deleteJob: (id: string) => Promise<void>
  readonly restoreJob: (id: string) => Promise<void>
  /** Takes a deleted job and its clips out of storage for good. */
  readonly dropJob: (id: string) => Promise<void>
  /** Takes the right to write from the tab that has it, once that has saved. */
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
  let saver: Saver | null = null
  const database = await openDatabase({
    onOlderBlocked: () => store.update((state) => tell(state, 'page', 'wrong', { key: 'other_tab_old', values: {} })),
    beforeNewer: async () => {
      if (saver !== null) await handOver(store, saver)
      store.update((state) => withSession(state, { newerVersion: 'taken', readOnly: true }))
    },
  })
  const [device, lists, reviews] = await Promise.all([
    loadDevice(database, FIRST_STATE.device),
    listJobs(database),
    loadReviews(database),
  ])
  store.update((state) => ({ ...withSession(state, { ...lists, reviews }), device }))
  await showRouted(store, database)

  saver = new Saver(store, database)
  return startWith({ store, database, homeScreen, nowS, saver })
}

interface FirstParts {
  readonly store: Store
  readonly database: Database
  readonly homeScreen: HomeScreen
  readonly nowS: () => number
  readonly saver: Saver
}

/** Everything was loaded: from now on it may be saved. */
async function startWith({ store, database, homeScreen, nowS, saver }: FirstParts): Promise<App> {
  const left = new LeftRecordings({ store, database, saver })
  const lock = new TabLock({
    onChange: (mayWrite) => {
      const wasReadOnly = store.get().session.readOnly
      void changeRight(store, database, saver, mayWrite)
      if (mayWrite && wasReadOnly) setTimeout(() => void left.find(), HANDED_OVER_MS)
    },
    beforeHandOver: () => handOver(store, saver),
  })
  await lock.start()
  if ((await loadDetector(database)) !== null) {
    const { takeUpDetector } = await import('./detector/installDetector')
    await takeUpDetector({ store, database })
  }
  const analyst = new Analyst()
  const keeper = new AnswerKeeper(store, analyst, database)
  const showNewJob = async (job: Job, screen: ScreenName) => {
    await saver.flush()
    await saveJob(database, job)
    const lists = await listJobs(database)
    showJob(store, saver, job)
    goTo({ screen, jobId: job.id, lineId: job.lines[0]!.id })
    await nextTask() // the list is left before it grows: nobody sees it, and its first date takes long
    store.update((state) => withSession(state, lists))
  }
  const changeJobs = async (change: () => Promise<void>) => {
    try {
      await change()
    } catch (error) {
      store.update((state) => withSession(state, { saving: { state: 'failed', full: isFull(error) } }))
    }
    const lists = await listJobs(database)
    store.update((state) => withSession(state, lists))
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
    saver,
    showNewJob,
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
    deleteJob: (id) =>
      changeJobs(async () => {
        await saver.flush() // it is put back with the last change
        await deleteJob(database, id, nowS())
        if (store.get().job?.id === id) showJob(store, saver, null)
      }),
    restoreJob: (id) =>
      changeJobs(async () => {
        await restoreJob(database, id)
        await left.find()
      }),
    dropJob: (id) => changeJobs(() => dropJob(database, id)),
    takeOver: async () => {
      if (await lock.takeOver()) return
      store.update((state) => tell(state, 'page', 'wrong', { key: 'other_tab_unsaved', values: {} }))
    },
  }
}

/**
 * Ends and saves what is under way, so that another tab may go on with it; nothing can be changed here afterwards.
 *
 * @returns False when it could not be saved; then this tab goes on.
 */
async function handOver(store: Store, saver: Saver): Promise<boolean> {
  store.update((state) => withSession(state, { handingOver: true }))
  await until(store, ({ session }) => !session.recording && (session.opening ?? ASKING).stage === 'asking')
  await saver.flush()
  const saved = store.get().session.saving.state === 'saved'
  store.update((state) => withSession(state, { handingOver: false, readOnly: saved || state.session.readOnly }))
  return saved
}

const ASKING = { stage: 'asking' }

function until(store: Store, isSo: (state: AppState) => boolean): Promise<void> {
  return new Promise((resolve) => {
    const look = () => {
      if (!isSo(store.get())) return
      leave()
      resolve()
    }
    const leave = store.subscribe(look)
    look()
  })
}

/** How long a tab that did not answer gets to end what it was recording, ms. Chosen. */
const HANDED_OVER_MS = 1500

/** What a killed page left behind is found, and what nobody has any more is taken out. */
async function tidyUp(store: Store, database: Database, left: LeftRecordings): Promise<void> {
  await left.find().catch(() => undefined) // it is there the next time
  await dropUnusedSounds(database, heldJobs(store)).catch(() => undefined)
  if (await completeSummaries(database).catch(() => false)) {
    const lists = await listJobs(database)
    store.update((state) => withSession(state, lists))
  }
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
      const [lists, device] = await Promise.all([listJobs(database), loadDevice(database, store.get().device)])
      const fresh = job === null ? null : await loadOrTell(store, database, job.id)
      const { lineId } = store.get().session
      showJob(store, saver, fresh)
      store.update((state) => ({ ...withSession(state, { ...lists, lineId }), device }))
    } catch (error) {
      store.update((state) => withSession(state, { saving: { state: 'failed', full: isFull(error) } }))
    }
  }
  store.update((state) => withSession(state, { readOnly: !mayWrite }))
}
