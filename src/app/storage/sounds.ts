import type { HeardClip } from '../../../shared/evidence/heardClip'
import type { KeptSound } from '../../../shared/job/job'
import { CORE_VERSION } from '../version'
import type { Database } from './database'
import { digestOf } from './digestOf'

/**
 * Keeps the bytes of a sound under their digest. Kept once, however often they come.
 *
 * @throws what the device throws when it has no room left; nothing is kept then.
 */
export async function keepSound(database: Database, bytes: Blob): Promise<KeptSound> {
  const sha256 = await digestOf(await bytes.arrayBuffer())
  if ((await database.count('sounds', sha256)) === 0) await database.put('sounds', { sha256, bytes })
  return { sha256, bytes: bytes.size }
}

/** @returns `null` when they are not, or no longer, in storage. */
export async function loadSound(database: Database, sha256: string): Promise<ArrayBuffer | null> {
  const kept = await database.get('sounds', sha256)
  return kept === undefined ? null : kept.bytes.arrayBuffer()
}

/** The bytes as they came, without reading them; `null` when they are not, or no longer, in storage. */
export async function soundBlob(database: Database, sha256: string): Promise<Blob | null> {
  return (await database.get('sounds', sha256))?.bytes ?? null
}

/** What was heard in a sound before, by this version of the core. */
export async function loadHeard(database: Database, sha256: string): Promise<HeardClip | null> {
  const kept = await database.get('evidence', evidenceKey(sha256))
  return kept?.heard ?? null
}

export async function keepHeard(database: Database, sha256: string, heard: HeardClip): Promise<void> {
  await database.put('evidence', { key: evidenceKey(sha256), heard })
}

function evidenceKey(sha256: string): string {
  return `${CORE_VERSION}/${sha256}`
}
