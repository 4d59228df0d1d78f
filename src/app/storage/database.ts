import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { HeardClip } from '../../../shared/evidence/heardClip'
import type { JobSummary } from '../store/state'

// Nothing else of the page touches IndexedDB but the files of this folder.

export interface YardharkSchema extends DBSchema {
  /** Jobs in the form of their file, with what the list shows of them. */
  jobs: { key: string; value: KeptJob }
  /** Sounds as they came, by the SHA-256 of their bytes. */
  sounds: { key: string; value: { readonly sha256: string; readonly bytes: Blob } }
  /** Evidence of sounds, by core version and digest. */
  evidence: { key: string; value: { readonly key: string; readonly heard: HeardClip } }
  /** Settings of this device by name. */
  device: { key: string; value: unknown }
}

export interface KeptJob {
  readonly id: string
  readonly summary: JobSummary
  /** As `jobJson` made it; only `readJob` may look into it. */
  readonly json: unknown
}

export type Database = IDBPDatabase<YardharkSchema>

const NAME = 'yardhark'
const VERSION = 1

/**
 * Opens the database, and makes it the first time.
 *
 * @param onOlderBlocked Called when another tab holds an older version open.
 */
export function openDatabase(onOlderBlocked: () => void): Promise<Database> {
  return openDB<YardharkSchema>(NAME, VERSION, {
    upgrade(database, oldVersion) {
      if (oldVersion < 1) {
        database.createObjectStore('jobs', { keyPath: 'id' })
        database.createObjectStore('sounds', { keyPath: 'sha256' })
        database.createObjectStore('evidence', { keyPath: 'key' })
        database.createObjectStore('device')
      }
    },
    blocked: onOlderBlocked,
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  })
}

/** True when a write failed because the device has no room left. */
export function isFull(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'QuotaExceededError'
}
