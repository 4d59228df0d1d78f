import type { JobClip } from '../job/job'
import type { ListenWay } from './slot'

/** `half`: one of the two clips that are wanted there is missing. */
export type PointState = 'done' | 'half' | 'open'

/** How far a point of a sweep is recorded, for the way that was chosen. */
export function pointState(clips: readonly JobClip[], point: number, way: ListenWay): PointState {
  const airs = new Set(clips.filter(({ row }) => row.point === point).map(({ row }) => row.air))
  if (airs.size === 0) return 'open'
  if (way === 'on') return airs.has('on') ? 'done' : 'half'
  return airs.size === 2 ? 'done' : 'half'
}
