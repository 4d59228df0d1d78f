import { CHUNK_S, type Chunk } from '../../../shared/record/joinChunks'
import type { Database, KeptRecording } from './database'

/** Written so that even a phone that loses its power has it; a browser that cannot promise that takes it as a wish. */
const DURABLE = { durability: 'strict' } as const

/** Notes that a recording begins. */
export async function beginRecording(database: Database, recording: KeptRecording): Promise<void> {
  const write = database.transaction('recordings', 'readwrite', DURABLE)
  await write.store.put(recording)
  await write.done
}

/** Makes a quarter second durable. @throws what the device throws when it has no room left. */
export async function keepChunk(database: Database, id: string, chunk: Chunk): Promise<void> {
  const write = database.transaction('chunks', 'readwrite', DURABLE)
  await write.store.put(chunk.channels, [id, chunk.number])
  await write.done
}

/** Recordings that never came into their job, the oldest first. */
export async function leftRecordings(database: Database): Promise<KeptRecording[]> {
  const left = await database.getAll('recordings')
  return left.sort((a, b) => a.timeS - b.timeS)
}

/** About how much of a recording is there, s: without reading it. */
export async function leftLengthS(database: Database, id: string): Promise<number> {
  return CHUNK_S * (await database.count('chunks', rangeOf(id)))
}

/** Takes a recording and its chunks out of storage: it is in its job, or thrown away. */
export async function forgetRecording(database: Database, id: string): Promise<void> {
  const write = database.transaction(['recordings', 'chunks'], 'readwrite')
  await Promise.all([
    write.objectStore('recordings').delete(id),
    write.objectStore('chunks').delete(rangeOf(id)),
    write.done,
  ])
}

/** Takes out chunks that belong to no recording, as a half-written database may have them. */
export async function dropStrayChunks(database: Database): Promise<void> {
  const ids = new Set(await database.getAllKeys('recordings'))
  const strays = new Set((await database.getAllKeys('chunks')).map(([id]) => id).filter((id) => !ids.has(id)))
  for (const id of strays) await database.delete('chunks', rangeOf(id))
}

/** What there is of a recording, in order. */
export async function chunksOf(database: Database, id: string): Promise<Chunk[]> {
  const [keys, values] = await Promise.all([
    database.getAllKeys('chunks', rangeOf(id)),
    database.getAll('chunks', rangeOf(id)),
  ])
  return keys.map(([, number], i) => ({ number, channels: values[i]! }))
}

function rangeOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER])
}
