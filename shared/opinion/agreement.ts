import type { Opinion } from '../job/opinions'
import { nearestPoint } from './nearestPoint'

/** How far the places agree that several ears, and the machine, name on one line. */
export interface Agreement {
  /** How many name a place. */
  readonly placed: number
  /** From the first place named to the last, m; `null` for fewer than two. */
  readonly spreadM: number | null
  /** Pairs that name the same nearest point, and all pairs. */
  readonly samePoint: number
  readonly pairs: number
  /** The stretch that every window shares, m; `null` where there is none. */
  readonly sharedWindowM: readonly [number, number] | null
}

export interface NamedPlace {
  readonly alongM: number
  readonly windowM: readonly [number, number]
}

/** @param places Of opinions and of the machine. @param points Of the line. */
export function agreement(
  places: readonly NamedPlace[],
  points: readonly { readonly point: number; readonly alongM: number }[],
): Agreement {
  const alongs = places.map(({ alongM }) => alongM)
  const nearest = alongs.map((alongM) => nearestPoint(alongM, points))
  const pairs = nearest.flatMap((first, i) => nearest.slice(i + 1).map((second) => first !== null && first === second))
  const from = Math.max(...places.map(({ windowM }) => windowM[0]))
  const to = Math.min(...places.map(({ windowM }) => windowM[1]))
  return {
    placed: places.length,
    spreadM: places.length < 2 ? null : Math.max(...alongs) - Math.min(...alongs),
    samePoint: pairs.filter(Boolean).length,
    pairs: pairs.length,
    sharedWindowM: places.length > 0 && from < to ? [from, to] : null,
  }
}

/** The place of an opinion; `null` when it names none. */
export function placeOfOpinion({ alongM, windowM }: Opinion): NamedPlace | null {
  return alongM === null || windowM === null ? null : { alongM, windowM }
}
