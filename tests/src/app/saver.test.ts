import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Job } from '../../../shared/job/job'
import { type Database, openDatabase } from '../../../src/app/storage/database'
import {
  deleteJob,
  dropJob,
  dropUnusedSounds,
  listJobs,
  loadJob,
  restoreJob,
  saveJob,
} from '../../../src/app/storage/jobs'
import { Saver } from '../../../src/app/storage/saver'
import { keepHeard, keepSound, loadHeard, loadSound } from '../../../src/app/storage/sounds'
import { renameJob } from '../../../src/app/store/actions/renameJob'
import { withSession } from '../../../src/app/store/changes'
import { FIRST_STATE } from '../../../src/app/store/state'
import { Store } from '../../../src/app/store/store'

const JOB: Job = { id: 'job', name: 'Yard', createdS: 1, changedS: 1, lines: [] }

let database: Database
let page: EventTarget
beforeEach(async () => {
  page = new EventTarget()
  const timers = { setTimeout: (...args: Parameters<typeof setTimeout>) => setTimeout(...args) }
  vi.stubGlobal('window', Object.assign(page, timers))
  vi.stubGlobal('document', Object.assign(new EventTarget(), { visibilityState: 'visible' }))
  database = await openDatabase({ onOlderBlocked: () => undefined, beforeNewer: () => Promise.resolve() })
})
afterEach(async () => {
  vi.unstubAllGlobals()
  for (const name of ['jobs', 'summaries', 'sounds', 'evidence', 'device'] as const) await database.clear(name)
  database.close()
})

function saving() {
  const store = new Store({ ...FIRST_STATE, job: JOB }, () => 2)
  const saver = new Saver(store, database)
  return { store, saver, state: () => store.get().session.saving.state }
}
const keptName = async () => (await loadJob(database, 'job'))?.name ?? null

describe('saving', () => {
  it('waits for calm, and writes the last of several changes', async () => {
    const { store, saver, state } = saving()
    expect(state()).toBe('saved')
    store.dispatch(renameJob, 'A')
    store.dispatch(renameJob, 'B')
    expect(state()).toBe('waiting')
    expect(await keptName()).toBeNull()
    await vi.waitFor(async () => expect(await keptName()).toBe('B'), { timeout: 5000 })
    await vi.waitFor(() => expect(state()).toBe('saved'), { timeout: 5000 })
    await saver.close()
  })

  it('is done at once when the page hides', async () => {
    const { store, saver } = saving()
    store.dispatch(renameJob, 'A')
    page.dispatchEvent(new Event('pagehide'))
    await vi.waitFor(async () => expect(await keptName()).toBe('A'), { timeout: 300, interval: 5 })
    await saver.close()
  })

  it('of what came out of storage is not done again', async () => {
    const { store, saver } = saving()
    const other = { ...JOB, id: 'other' }
    saver.accept(other)
    store.update((state) => ({ ...state, job: other }))
    await saver.flush()
    expect((await listJobs(database)).jobs).toEqual([])
    await saver.close()
  })

  it('queues a change made while it is under way', async () => {
    const { store, saver } = saving()
    store.dispatch(renameJob, 'A')
    const first = saver.flush()
    store.dispatch(renameJob, 'B')
    await first
    await vi.waitFor(async () => expect(await keptName()).toBe('B'), { timeout: 5000 })
    await saver.close()
  })

  it('that failed stays on show and is done by trying again', async () => {
    const { store, saver, state } = saving()
    const roomy = database.transaction.bind(database)
    let isFull = true
    const full = vi.spyOn(database, 'transaction').mockImplementation((...args: Parameters<typeof roomy>) => {
      if (isFull) throw new DOMException('no room', 'QuotaExceededError')
      return roomy(...args)
    })
    store.dispatch(renameJob, 'A')
    await saver.flush()
    expect(store.get().session.saving).toEqual({ state: 'failed', full: true })
    isFull = false
    await saver.flush()
    expect(state()).toBe('saved')
    expect(await keptName()).toBe('A')
    full.mockRestore()
    await saver.close()
  })

  it('does nothing where another tab has the jobs', async () => {
    const { store, saver } = saving()
    store.dispatch(renameJob, 'A')
    store.update((state) => withSession(state, { readOnly: true }))
    await saver.flush()
    expect(await keptName()).toBeNull()
    await saver.close()
  })
})

describe('sounds', () => {
  const job = (sha256: string): Job => ({
    ...JOB,
    lines: [
      {
        id: 'line',
        name: 'Line 1',
        line: {
          lengthM: null,
          depthM: null,
          airInletM: null,
          vertices: null,
          routeSdM: null,
          stretches: [],
          fittings: [],
          noises: [],
          pipe: null,
          unknown: {},
        },
        problems: [],
        confirmations: [],
        sweeps: [
          { id: 'sweep', name: '1', problems: [], clips: [{ row: ROW, sound: { sha256, bytes: 3 }, problems: [] }] },
        ],
      },
    ],
  })
  const ROW = {
    point: 1,
    alongM: 0,
    file: '1.wav',
    air: 'on',
    take: 1,
    sharedTake: false,
    sweep: '1',
    offsetM: 0,
    timeS: null,
    contact: null,
    airKpa: null,
    note: '',
    unknown: {},
  } as const

  it('are kept once under the digest of their bytes', async () => {
    // SHA-256 of "abc": FIPS 180-2, appendix B.1.
    const digest = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'
    const bytes = new Blob(['abc'])
    expect(await keepSound(database, bytes)).toEqual({ sha256: digest, bytes: 3 })
    expect(await keepSound(database, bytes)).toEqual({ sha256: digest, bytes: 3 })
    expect(await database.count('sounds')).toBe(1)
    expect(await loadSound(database, 'none')).toBeNull()
  })

  it('go with their evidence when the last job that has them is deleted for good, and not before', async () => {
    const { sha256 } = await keepSound(database, new Blob(['abc']))
    await keepHeard(database, sha256, { evidence: null, problems: [] })
    await saveJob(database, job(sha256))
    await saveJob(database, { ...job(sha256), id: 'second' })
    await deleteJob(database, 'second', 3)
    await dropJob(database, 'job')
    expect(await database.count('sounds')).toBe(1)
    expect(await loadHeard(database, sha256)).toEqual({ evidence: null, problems: [] })
    await dropJob(database, 'second')
    expect(await database.count('sounds')).toBe(0)
    expect(await loadHeard(database, sha256)).toBeNull()
  })

  it('stay while a job that is open or can come back has them', async () => {
    const { sha256 } = await keepSound(database, new Blob(['abc']))
    await dropUnusedSounds(database, [job(sha256)])
    expect(await database.count('sounds')).toBe(1)
  })
})

it('the list of jobs has the last changed first', async () => {
  await saveJob(database, JOB)
  await saveJob(database, { ...JOB, id: 'later', changedS: 5 })
  expect((await listJobs(database)).jobs.map(({ id }) => id)).toEqual(['later', 'job'])
})

describe('a deleted job', () => {
  it('is not in the list and cannot be opened, and is put back as it was', async () => {
    await saveJob(database, JOB)
    await saveJob(database, { ...JOB, id: 'later', changedS: 5 })
    await deleteJob(database, 'job', 9)
    expect(await listJobs(database)).toMatchObject({
      jobs: [{ id: 'later' }],
      deletedJobs: [{ id: 'job', deletedS: 9 }],
    })
    expect(await loadJob(database, 'job')).toBeNull()
    await restoreJob(database, 'job')
    expect(await listJobs(database)).toMatchObject({ jobs: [{ id: 'later' }, { id: 'job' }], deletedJobs: [] })
    expect(await loadJob(database, 'job')).toEqual(JOB)
  })

  it('that is not there changes nothing', async () => {
    await deleteJob(database, 'none', 9)
    await restoreJob(database, 'none')
    expect(await listJobs(database)).toEqual({ jobs: [], deletedJobs: [] })
  })
})
