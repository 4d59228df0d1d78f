import { InputError } from '../base/errors'
import type { Opinion } from '../job/opinions'

/** Where the leak is likely along a line: a value at each place of a rising grid, per metre. */
export interface PlaceDensity {
  readonly alongM: readonly number[]
  readonly perM: readonly number[]
}

/**
 * What an opinion with a place says as a density: its confidence spread evenly over its window, the rest evenly over the
 * rest of the range.
 *
 * An even spread is the least that a window with a chance says; a person who gives a place within it says no more of the
 * shape. The density is a step function sampled on the grid, scaled so that its integral by trapezoids is 1.
 *
 * @param alongM Rising, the whole range that was searched, m.
 * @returns `null` for an opinion without a place.
 */
export function opinionDensity({ windowM, confidence }: Opinion, alongM: readonly number[]): PlaceDensity | null {
  if (windowM === null || confidence === null) return null
  const [low, high] = [alongM[0]!, alongM.at(-1)!]
  const from = Math.max(low, Math.min(windowM[0], high))
  const to = Math.min(high, Math.max(windowM[1], low))
  const inside = to > from ? confidence / (to - from) : 0
  const outside = high - low > to - from ? (1 - confidence) / (high - low - Math.max(0, to - from)) : 0
  return normalised({ alongM, perM: alongM.map((place) => (place >= from && place <= to ? inside : outside)) })
}

/**
 * The linear opinion pool: the mean of densities over one grid, each weighed alike.
 *
 *     p(x) = Σ w[i]·p[i](x),   w[i] = 1/n
 *
 * The simplest rule that leaves every expert's own chance in: where one of them sees the leak and the others do not, it
 * stays possible. Equal weights, since how well each judges is not known beforehand.
 *
 * @param densities Of opinions and of the machine, over the same grid; each is scaled to an integral of 1 before.
 * @returns `null` of none.
 * @throws {InputError} grids that differ.
 * @see M. Stone 1961, "The opinion pool". [Stone1961]
 */
export function pooledDensity(densities: readonly PlaceDensity[]): PlaceDensity | null {
  const [first] = densities
  if (first === undefined) return null
  if (
    densities.some(
      ({ alongM }) => alongM.length !== first.alongM.length || alongM.some((x, i) => x !== first.alongM[i]),
    )
  ) {
    throw new InputError('densities to be pooled stand on different grids')
  }
  const all = densities.map(normalised)
  return {
    alongM: first.alongM,
    perM: first.alongM.map((_, i) => all.reduce((sum, { perM }) => sum + perM[i]!, 0) / all.length),
  }
}

/** The same with an integral of 1 by trapezoids; as it is where it is 0 everywhere. */
export function normalised(density: PlaceDensity): PlaceDensity {
  const { alongM, perM } = density
  let total = 0
  for (let i = 1; i < alongM.length; i++) total += ((perM[i]! + perM[i - 1]!) / 2) * (alongM[i]! - alongM[i - 1]!)
  return total > 0 ? { alongM, perM: perM.map((value) => value / total) } : density
}
