import { type Review, reviewKey } from '../store/review'
import type { Database } from './database'

const REVIEWS = IDBKeyRange.bound('review/', 'review/~')

/** Everything that was begun on this device, by key. */
export async function loadReviews(database: Database): Promise<Record<string, Review>> {
  const kept = (await database.getAll('device', REVIEWS)) as Review[]
  return Object.fromEntries(kept.map((review) => [reviewKey(review.jobId, review.lineId), review]))
}

/** @throws what the device throws when it has no room left. */
export async function keepReviews(database: Database, reviews: readonly Review[]): Promise<void> {
  const write = database.transaction('device', 'readwrite')
  for (const review of reviews) await write.store.put(review, reviewKey(review.jobId, review.lineId))
  await write.done
}
