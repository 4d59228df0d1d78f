import type { AssignedClip } from './assignClips'
import type { SweepRow } from './sweep'

/** Where a point of a line lies. */
export interface PlacedPoint {
  readonly point: number
  readonly alongM: number
  readonly offsetM: number
}

/**
 * Clips that say the same as another, of the same point, take and air: among themselves, or of the sweep they join.
 *
 * @param rows Of the sweep they join; none for a sweep of their own.
 * @returns Their names; each has to get another take, or another point.
 */
export function doubledClips(clips: readonly AssignedClip[], rows: readonly SweepRow[]): string[] {
  const keyOf = ({ point, take, air }: { point: number | null; take: number; air: string }) => `${point} ${take} ${air}`
  const there = new Set(rows.map(keyOf))
  const seen = new Set<string>()
  const told = clips.filter(({ point }) => point !== null)
  return told.flatMap((clip) => {
    const key = keyOf(clip)
    const isDoubled = there.has(key) || seen.has(key)
    seen.add(key)
    return isDoubled ? [clip.name] : []
  })
}

/**
 * The same clips when they are to join another sweep: takes go on behind those that it has at each point, air on and off
 * of a take together.
 *
 * @param from Rows of the sweep that takes were counted behind so far.
 */
export function countedBehind(
  clips: readonly AssignedClip[],
  from: readonly SweepRow[],
  to: readonly SweepRow[],
): AssignedClip[] {
  const highest = (rows: readonly SweepRow[], point: number) =>
    rows.reduce((most, row) => (row.point === point ? Math.max(most, row.take) : most), 0)
  return clips.map((clip) =>
    clip.point === null
      ? clip
      : { ...clip, take: Math.max(1, clip.take - highest(from, clip.point) + highest(to, clip.point)) },
  )
}

/**
 * One of the clips with another point or air, and the next take that is free there.
 *
 * @param rows Of the sweep they join.
 */
export function movedClip(
  clips: readonly AssignedClip[],
  rows: readonly SweepRow[],
  name: string,
  to: Partial<Pick<AssignedClip, 'point' | 'air'>>,
): AssignedClip[] {
  const others = clips.filter((clip) => clip.name !== name)
  return clips.map((clip) => {
    if (clip.name !== name) return clip
    const moved = { ...clip, ...to }
    if (moved.point === null) return moved
    const told = [...others, ...rows].filter(({ point, air }) => point === moved.point && air === moved.air)
    const base = rows.reduce((most, { point, take }) => (point === moved.point ? Math.max(most, take) : most), 0)
    let take = base + 1
    while (told.some((each) => each.take === take)) take++
    return { ...moved, take }
  })
}

/**
 * Rows of a sweep for clips that were assigned; those of no point have none.
 *
 * @param points Of the line; a clip of a point that is not among them has no row.
 * @param taken  Paths of all clips of the line: names that are taken get a number.
 */
export function joinedRows(
  clips: readonly AssignedClip[],
  points: readonly PlacedPoint[],
  { sweep, taken }: { readonly sweep: string; readonly taken: ReadonlySet<string> },
): { readonly name: string; readonly row: SweepRow }[] {
  const placed = new Map(points.map((each) => [each.point, each]))
  const paths = new Set([...taken].map((path) => path.toLowerCase()))
  return clips.flatMap(({ name, point, air, take }) => {
    const place = point === null ? undefined : placed.get(point)
    if (place === undefined) return []
    const file = freePath(name, paths)
    paths.add(file.toLowerCase())
    const row: SweepRow = {
      point: place.point,
      alongM: place.alongM,
      offsetM: place.offsetM,
      file,
      air,
      take,
      sharedTake: true,
      sweep,
      timeS: null,
      contact: null,
      airKpa: null,
      note: '',
      unknown: {},
    }
    return [{ name, row }]
  })
}

function freePath(name: string, taken: ReadonlySet<string>): string {
  const [, stem, ending = ''] = /^(.*?)(\.[^./]*)?$/s.exec(name)!
  for (let copy = 1; ; copy++) {
    const path = copy === 1 ? name : `${stem}-${copy}${ending}`
    if (!taken.has(path.toLowerCase())) return path
  }
}
