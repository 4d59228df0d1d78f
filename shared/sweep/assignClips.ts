/** A clip of a recorder, and which point of a line it is of. */
export interface AssignedClip {
  /** Name of its file. */
  readonly name: string
  /** `null`: of none, so far. */
  readonly point: number | null
  readonly air: 'on' | 'off'
  /** Clips of one point and take, air on and off, were made without lifting the microphone. */
  readonly take: number
}

/** What was recorded at each point, in this order. */
export const CLIP_ORDERS = ['on', 'on_off', 'off_on'] as const
export type ClipOrder = (typeof CLIP_ORDERS)[number]

/**
 * Clips by the numbers in their names.
 *
 * Recorders put dates and counters into names, people the point's number. Of the runs of digits, counted from the left,
 * that one is taken under which most different points of the line are named, and then most files; `on` and `off` as
 * words of the name tell the air, `take` and its number the take. Files whose number is none of the line's points are of
 * none.
 *
 * @param names  In any order.
 * @param points Numbers of the line's points.
 * @returns One for each name, by point, then as the names are counted; those of no point last.
 */
export function assignByName(names: readonly string[], points: readonly number[]): AssignedClip[] {
  const known = new Set(points)
  const read = [...names].sort(byCount).map((name) => ({ name, ...readName(name) }))
  const most = read.reduce((count, { numbers }) => Math.max(count, numbers.length), 0)
  const pointUnder = ({ numbers }: NameRead, run: number) => (known.has(numbers[run]!) ? numbers[run]! : null)
  const scores = Array.from({ length: most }, (_, run) => {
    const found = read.flatMap((each) => pointUnder(each, run) ?? [])
    return { run, points: new Set(found).size, files: found.length }
  })
  const [best] = scores.sort((a, b) => b.points - a.points || b.files - a.files || a.run - b.run)
  const clips = read.map((each) => {
    const point = best === undefined ? null : pointUnder(each, best.run)
    return { name: each.name, point, air: each.air, take: each.take }
  })
  return withTakes(
    clips.sort((a, b) => (a.point ?? Number.POSITIVE_INFINITY) - (b.point ?? Number.POSITIVE_INFINITY) || 0),
  )
}

/**
 * Clips in the order of their names, as a recorder counts them, along the points.
 *
 * @param points Numbers of the points in the order they were listened at.
 * @returns One for each name; those after the last point are of none.
 */
export function assignInOrder(names: readonly string[], points: readonly number[], order: ClipOrder): AssignedClip[] {
  const airs = AIRS[order]
  const clips = [...names].sort(byCount).map((name, i) => ({
    name,
    point: points[Math.floor(i / airs.length)] ?? null,
    air: airs[i % airs.length]!,
    take: null,
  }))
  return withTakes(clips)
}

/** Names as people count: `2.wav` before `10.wav`; upper and lower case are one. */
export function byCount(a: string, b: string): number {
  const [left, right] = [a, b].map((name) => name.toLowerCase().split(/(\d+)/))
  for (let i = 0; i < Math.min(left!.length, right!.length); i++) {
    const [x, y] = [left![i]!, right![i]!]
    if (x === y) continue
    const difference = i % 2 === 1 ? Number(x) - Number(y) : 0
    return difference || (x < y ? -1 : 1)
  }
  return left!.length - right!.length || (a < b ? -1 : a > b ? 1 : 0)
}

const AIRS: Record<ClipOrder, readonly ('on' | 'off')[]> = { on: ['on'], on_off: ['on', 'off'], off_on: ['off', 'on'] }

interface NameRead {
  readonly numbers: readonly number[]
  readonly air: 'on' | 'off'
  readonly take: number | null
}

function readName(name: string): NameRead {
  const stem = name.replace(/\.\w+$/, '')
  const take = /(?<![a-z])take[ _-]*(\d{1,6})/i.exec(stem)
  const rest = take === null ? stem : stem.replace(take[0], ' ')
  return {
    numbers: [...rest.matchAll(/\d+/g)].map(([digits]) => (digits.length <= 15 ? Number(digits) : Number.NaN)),
    air: /(?<![a-z])off(?![a-z])/i.test(rest) ? 'off' : 'on',
    take: take === null ? null : Number(take[1]),
  }
}

/** The take that each name tells, else the next that its point and air have free. */
function withTakes(clips: readonly (Omit<AssignedClip, 'take'> & { readonly take: number | null })[]): AssignedClip[] {
  const taken = new Set(
    clips.filter(({ take }) => take !== null).map(({ point, air, take }) => `${point} ${air} ${take}`),
  )
  return clips.map((clip) => {
    if (clip.point === null) return { ...clip, take: clip.take ?? 1 }
    if (clip.take !== null) return { ...clip, take: clip.take }
    let take = 1
    while (taken.has(`${clip.point} ${clip.air} ${take}`)) take++
    taken.add(`${clip.point} ${clip.air} ${take}`)
    return { ...clip, take }
  })
}
