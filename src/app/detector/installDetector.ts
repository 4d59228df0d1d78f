import { FormatError } from '../../../shared/base/errors'
import { readModel } from '../../../shared/learn/readModel'
import type { Keyed } from '../../../shared/words/sentence'
import type { Database } from '../storage/database'
import { dropDetector, keepDetector, loadDetector } from '../storage/detector'
import { withSession } from '../store/changes'
import { tell } from '../store/notices'
import type { Store } from '../store/store'

/** A model of two hundred trees and twenty thousand clips has about one million characters. */
const MOST_BYTES = 5_000_000

interface Parts {
  readonly store: Store
  readonly database: Database
}

/** Takes up what was installed before. One that this version cannot read is told of, stays where it is and is not asked. */
export async function takeUpDetector({ store, database }: Parts): Promise<void> {
  const text = await loadDetector(database)
  if (text === null) return
  try {
    const detector = readModel(text, 'detector')
    store.update((state) => withSession(state, { detector }))
  } catch (error) {
    if (!(error instanceof FormatError)) throw error
    store.update((state) => tell(state, 'page', 'odd', { key: 'detector_not_read', values: { why: wrongIn(error) } }))
  }
}

/**
 * Installs a model file: it is read whole before anything is changed.
 *
 * @returns What is wrong with it; `null` when it was installed.
 */
export async function installDetector({ store, database }: Parts, file: Blob, name: string): Promise<Keyed | null> {
  if (file.size > MOST_BYTES) return { key: 'detector_too_big', values: { file: name } }
  try {
    const text = await file.text()
    const detector = readModel(text, name)
    await keepDetector(database, text)
    store.update((state) => withSession(state, { detector }))
    return null
  } catch (error) {
    if (error instanceof FormatError) return { key: 'detector_refused', values: { file: name, why: wrongIn(error) } }
    return { key: 'detector_not_kept', values: { why: error instanceof Error ? error.message : String(error) } }
  }
}

export async function removeDetector({ store, database }: Parts): Promise<void> {
  await dropDetector(database)
  store.update((state) => withSession(state, { detector: null }))
}

function wrongIn({ place, mend }: FormatError): string {
  return [place, mend].filter((part) => part !== '').join(': ')
}
