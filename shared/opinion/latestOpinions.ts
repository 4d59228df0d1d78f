import type { Opinion } from '../job/opinions'

/** One who listens: a device and the name given on it, as several may share a desk. */
export function earKey({ deviceKey, reviewer }: Pick<Opinion, 'deviceKey' | 'reviewer'>): string {
  return JSON.stringify([deviceKey, reviewer.trim()])
}

/** The newest opinion of each person, in the order in which they were given. */
export function latestOpinions(opinions: readonly Opinion[]): Opinion[] {
  const inTime = [...opinions].sort((a, b) => a.timeS - b.timeS || (a.id < b.id ? -1 : 1))
  const latest = new Map(inTime.map((opinion) => [earKey(opinion), opinion]))
  return inTime.filter((opinion) => latest.get(earKey(opinion)) === opinion)
}
