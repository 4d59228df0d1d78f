import type { JobClip } from '../job/job'

/** A place to set the microphone down at. */
export interface ListenPoint {
  readonly point: number
  readonly alongM: number
  readonly offsetM: number
}

/** One clip that is to be recorded. */
export interface Slot extends ListenPoint {
  readonly air: 'on' | 'off'
  readonly take: number
  /** The air-off half of a setting-down: the microphone stays where it is. */
  readonly staysPut: boolean
  /** The first point once more, to tell how the sound has drifted meanwhile. */
  readonly isReference: boolean
}

/** `on`: with the air on only. `both`: on and off in one setting-down. `passes`: all points with it on, then all with it off. */
export const LISTEN_WAYS = ['on', 'both', 'passes'] as const
export type ListenWay = (typeof LISTEN_WAYS)[number]

/** What is there of a sweep: its clips, and those taken out of it, whose take numbers stay theirs. */
export interface SweepSoFar {
  readonly clips: readonly JobClip[]
  readonly removed: readonly JobClip[]
}

/** The next take at a point: a new setting-down. */
export function nextTake(point: number, { clips, removed }: SweepSoFar): number {
  const takes = [...clips, ...removed].filter(({ row }) => row.point === point).map(({ row }) => row.take)
  return takes.reduce((highest, take) => Math.max(highest, take), 0) + 1
}
