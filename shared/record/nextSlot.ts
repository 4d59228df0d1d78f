import type { JobClip } from '../job/job'
import { type ListenPoint, type ListenWay, nextTake, type Slot, type SweepSoFar } from './slot'

/**
 * What to record after a clip: the air-off half of its setting-down, or else the nearest point that lacks something (of
 * two as near, the one farther along), with all air-on clips before the air-off ones where they are two passes. When
 * nothing is lacking, the first recorded point once more as a reference; after that, nothing.
 *
 * @param points In any order.
 * @param after  The clip just recorded, which is among the clips; `null` at the start.
 * @returns `null` when all is recorded, or there is no point.
 */
export function nextSlot(
  points: readonly ListenPoint[],
  way: ListenWay,
  soFar: SweepSoFar,
  after: Slot | null,
): Slot | null {
  const [start] = [...points].sort(byAlong)
  if (start === undefined) return null
  if (after !== null && way === 'both' && after.air === 'on' && !isThere(soFar.clips, after.point, 'off', after.take)) {
    return { ...after, air: 'off', staysPut: true }
  }
  const fromM = after?.alongM ?? start.alongM
  const nearest = [...points].sort(
    (a, b) => Math.abs(a.alongM - fromM) - Math.abs(b.alongM - fromM) || b.alongM - a.alongM || a.point - b.point,
  )
  for (const air of way === 'passes' ? (['on', 'off'] as const) : (['on'] as const)) {
    const lacking = nearest.find(({ point }) => !hasAll(soFar.clips, point, way, air))
    if (lacking !== undefined) return newSetting(lacking, air, soFar)
  }
  return referenceSlot(points, soFar)
}

/** A setting-down at a point of one's own choice: with the air off only where the second pass has come to that. */
export function slotAt(point: ListenPoint, way: ListenWay, soFar: SweepSoFar): Slot {
  const isSecondPass =
    way === 'passes' && isThere(soFar.clips, point.point, 'on') && !isThere(soFar.clips, point.point, 'off')
  return newSetting(point, isSecondPass ? 'off' : 'on', soFar)
}

/** The same clip again: set down anew, a take of its own. */
export function slotAgain(slot: Slot, way: ListenWay, soFar: SweepSoFar): Slot {
  const air = way === 'both' ? 'on' : slot.air
  return { ...slot, air, staysPut: false, take: nextTake(slot.point, soFar) }
}

function newSetting({ point, alongM, offsetM }: ListenPoint, air: 'on' | 'off', soFar: SweepSoFar): Slot {
  return { point, alongM, offsetM, air, take: nextTake(point, soFar), staysPut: false, isReference: false }
}

function referenceSlot(points: readonly ListenPoint[], soFar: SweepSoFar): Slot | null {
  const ons = soFar.clips.filter(({ row, recording }) => row.air === 'on' && recording !== undefined)
  const inTime = [...ons].sort((a, b) => (a.row.timeS ?? 0) - (b.row.timeS ?? 0))
  const [first] = inTime
  if (first === undefined || inTime.at(-1)?.row.point === first.row.point) return null
  const point = points.find((each) => each.point === first.row.point)
  return point === undefined ? null : { ...newSetting(point, 'on', soFar), isReference: true }
}

function hasAll(clips: readonly JobClip[], point: number, way: ListenWay, air: 'on' | 'off'): boolean {
  if (way !== 'both') return isThere(clips, point, air)
  return clips.some(({ row }) => row.point === point && row.air === 'on' && isThere(clips, point, 'off', row.take))
}

function isThere(clips: readonly JobClip[], point: number, air: 'on' | 'off', take?: number): boolean {
  return clips.some(({ row }) => row.point === point && row.air === air && (take === undefined || row.take === take))
}

function byAlong(a: ListenPoint, b: ListenPoint): number {
  return a.alongM - b.alongM || a.point - b.point
}
