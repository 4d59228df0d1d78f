import type { Database } from './database'

const KEY = 'detector'

/** The text of the model file that was installed; `null` when there is none. */
export async function loadDetector(database: Database): Promise<string | null> {
  const kept = await database.get('device', KEY)
  return typeof kept === 'string' ? kept : null
}

/** Keeps a model file that was read and found good, instead of the one before. */
export async function keepDetector(database: Database, text: string): Promise<void> {
  await database.put('device', text, KEY)
}

export async function dropDetector(database: Database): Promise<void> {
  await database.delete('device', KEY)
}
