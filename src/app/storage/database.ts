import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { HeardClip } from '../../../shared/evidence/heardClip'
import type { Recording } from '../../../shared/job/recording'
import type { Slot } from '../../../shared/record/slot'
import type { Contact } from '../../../shared/sweep/sweep'
import type { JobSummary } from '../store/state'

// Nothing else of the page touches IndexedDB but the files of this folder.

export interface YardharkSchema extends DBSchema {
  /** Jobs in the form of their file, with what the list shows of them. */
  jobs: { key: string; value: KeptJob }
  /** What the list shows of them, apart: a list of a hundred jobs reads none of them. */
  summaries: { key: string; value: KeptSummary }
  /** Sounds as they came, by the SHA-256 of their bytes. */
  sounds: { key: string; value: { readonly sha256: string; readonly bytes: Blob } }
  /** Evidence of sounds, by core version and digest. */
  evidence: { key: string; value: { readonly key: string; readonly heard: HeardClip } }
  /** Recordings that are not in their job yet: one under way, and what a killed page left behind. */
  recordings: { key: string; value: KeptRecording }
  /** Their quarter seconds, by id and number. */
  chunks: { key: [string, number]; value: readonly Float32Array[] }
  /** Settings of this device by name. */
  device: { key: string; value: unknown }
}

export interface KeptJob {
  readonly id: string
  readonly summary: JobSummary
  /** As `jobJson` made it; only `readJob` may look into it. */
  readonly json: unknown
  /** When it was deleted, s since 1970: it can be put back. Missing for a job that is in the list. */
  readonly deletedS?: number
}

/** Of a kept job, and changed together with it. */
export type KeptSummary = Pick<KeptJob, 'id' | 'summary' | 'deletedS'>

/** What is known of a recording when it begins; the rest is worked out of its chunks. */
export interface KeptRecording {
  readonly id: string
  readonly jobId: string
  readonly lineId: string
  readonly sweep: string
  readonly slot: Slot
  readonly contact: Contact | null
  /** When it began, s since 1970. */
  readonly timeS: number
  readonly about: Omit<Recording, 'keptBits' | 'endedBy'>
}

export type Database = IDBPDatabase<YardharkSchema>

const NAME = 'yardhark'
/** 2: recordings and their chunks. 3: summaries of the jobs. What stands in an older one stays as it is. */
const VERSION = 3

export interface DatabaseListeners {
  /** Another tab holds an older version open: opening waits for it. */
  readonly onOlderBlocked: () => void
  /** Another tab needs a newer version: what is not saved yet must be. The database is closed afterwards. */
  readonly beforeNewer: () => Promise<void>
}

/**
 * Opens the database, makes it the first time, and turns an older one into this version's. Nothing in it is lost by that.
 *
 * @throws A `VersionError` of the browser when it was made by a newer version of the page; it is not touched then.
 */
export function openDatabase({ onOlderBlocked, beforeNewer }: DatabaseListeners): Promise<Database> {
  return openDB<YardharkSchema>(NAME, VERSION, {
    async upgrade(database, oldVersion, _newVersion, transaction) {
      if (oldVersion < 1) {
        database.createObjectStore('jobs', { keyPath: 'id' })
        database.createObjectStore('sounds', { keyPath: 'sha256' })
        database.createObjectStore('evidence', { keyPath: 'key' })
        database.createObjectStore('device')
      }
      if (oldVersion < 2) {
        database.createObjectStore('recordings', { keyPath: 'id' })
        database.createObjectStore('chunks')
      }
      if (oldVersion < 3) {
        const summaries = database.createObjectStore('summaries', { keyPath: 'id' })
        const kept = await transaction.objectStore('jobs').getAll()
        for (const each of kept) summaries.put(keptSummary(each))
      }
    },
    blocked: onOlderBlocked,
    blocking: (_current, _blocked, event) => void beforeNewer().finally(() => (event.target as IDBDatabase).close()),
  })
}

/** The part of a kept job that the list is made of. */
export function keptSummary({ id, summary, deletedS }: KeptJob): KeptSummary {
  return deletedS === undefined ? { id, summary } : { id, summary, deletedS }
}

/** True when what is kept here was made by a newer version of the page. */
export function isNewer(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'VersionError'
}

/** True when a write failed because the device has no room left. */
export function isFull(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'QuotaExceededError'
}
