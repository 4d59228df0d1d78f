import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Job } from '../../../shared/job/job'
import { jobJson } from '../../../shared/job/jobJson'
import { isFull, isNewer, openDatabase } from '../../../src/app/storage/database'
import { completeSummaries, deleteJob, listJobs, loadJob, summaryOf } from '../../../src/app/storage/jobs'
import { loadSound } from '../../../src/app/storage/sounds'

const JOB: Job = { id: 'job', name: 'Yard', createdS: 1, changedS: 1, lines: [] }
const LISTENERS = { onOlderBlocked: () => undefined, beforeNewer: () => Promise.resolve() }

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
})

/** A database as a page of that version left it: with the stores that it had, and something in them. */
function keptBy(version: number, stores: readonly (readonly [string, string?])[]): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('yardhark', version)
    request.onupgradeneeded = () => {
      for (const [name, keyPath] of stores) {
        request.result.createObjectStore(name, keyPath === undefined ? undefined : { keyPath })
      }
    }
    request.onerror = () => reject(request.error)
    request.onsuccess = () => {
      const write = request.result.transaction(['jobs', 'sounds'], 'readwrite')
      write.objectStore('jobs').put({ id: 'job', summary: summaryOf(JOB), json: jobJson(JOB) })
      write.objectStore('sounds').put({ sha256: 'ab', bytes: new Blob(['abc']) })
      write.oncomplete = () => {
        request.result.close()
        resolve()
      }
    }
  })
}

const FIRST_STORES = [['jobs', 'id'], ['sounds', 'sha256'], ['evidence', 'key'], ['device']] as const

describe('a database', () => {
  it('of the first version, before anything was recorded, has its jobs and sounds, and takes recordings', async () => {
    await keptBy(1, FIRST_STORES)
    const database = await openDatabase(LISTENERS)
    expect((await listJobs(database)).jobs.map(({ name }) => name)).toEqual(['Yard'])
    expect(await loadJob(database, 'job')).toEqual(JOB)
    expect(Buffer.from((await loadSound(database, 'ab'))!).toString()).toBe('abc')
    expect([...database.objectStoreNames]).toEqual([
      'chunks',
      'device',
      'evidence',
      'jobs',
      'recordings',
      'sounds',
      'summaries',
    ])
    await deleteJob(database, 'job', 5)
    expect((await listJobs(database)).deletedJobs).toMatchObject([{ name: 'Yard', deletedS: 5 }])
    database.close()
  })

  it('of jobs that an older version kept without saying how far they are has that worked out', async () => {
    const database = await openDatabase(LISTENERS)
    const { stage: _, opinionCount: __, ...older } = summaryOf(JOB)
    await database.put('jobs', { id: 'job', summary: older, json: jobJson(JOB) })
    await database.put('summaries', { id: 'job', summary: older })
    expect(await completeSummaries(database)).toBe(true)
    expect((await listJobs(database)).jobs).toEqual([summaryOf(JOB)])
    expect(await completeSummaries(database)).toBe(false)
    database.close()
  })

  it('of a newer version is refused, and is as it was afterwards', async () => {
    await keptBy(1000, [...FIRST_STORES, ['more']])
    const refused = await openDatabase(LISTENERS).catch((error: unknown) => error)
    expect(isNewer(refused)).toBe(true)
    expect(isFull(refused)).toBe(false)
    const names = await new Promise<string[]>((resolve) => {
      const request = indexedDB.open('yardhark')
      request.onsuccess = () => resolve([...request.result.objectStoreNames])
    })
    expect(names).toEqual(['device', 'evidence', 'jobs', 'more', 'sounds'])
  })

  it('that a newer page wants to turn into its own is saved to first, and then given up', async () => {
    const order: string[] = []
    const beforeNewer = async () => void order.push('saved')
    await openDatabase({ ...LISTENERS, beforeNewer })
    await new Promise<void>((resolve) => {
      const request = indexedDB.open('yardhark', 1000)
      request.onsuccess = () => {
        order.push('newer')
        request.result.close()
        resolve()
      }
    })
    expect(order).toEqual(['saved', 'newer'])
  })
})
