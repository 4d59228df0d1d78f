import type { PointAnswer } from './answer'
import type { HeardPoint } from './pointEvidence'
import { massBetween } from './window'

/**
 * Ranks points by the probability that the leak is nearer to each than to any other; ties by number.
 *
 * Points in one place share its probability. Without a density (too few points) nearness cannot be worked out: the
 * probability is shared in proportion to how far each point stands over the floor in power, which ranks by ear.
 */
export function rankPoints(
  points: readonly HeardPoint[],
  density: { readonly alongM: Float64Array; readonly perM: Float64Array } | null,
): PointAnswer[] {
  const nearest = density === null ? byLoudness(points) : byDensity(points, density)
  const order = points.map((_, i) => i).sort((a, b) => nearest[b]! - nearest[a]! || points[a]!.point - points[b]!.point)
  const rankOf = new Map(order.map((index, place) => [index, place + 1]))
  return points
    .map((point, i) => ({ ...point, rank: rankOf.get(i)!, nearestProbability: nearest[i]! }))
    .sort((a, b) => a.rank - b.rank)
}

function byDensity(
  points: readonly HeardPoint[],
  { alongM, perM }: { readonly alongM: Float64Array; readonly perM: Float64Array },
): number[] {
  const places = [...new Set(points.map((point) => point.alongM))].sort((a, b) => a - b)
  const total = massBetween(alongM, perM, alongM[0]!, alongM[alongM.length - 1]!)
  const massAt = new Map(
    places.map((place, i) => {
      const low = i === 0 ? alongM[0]! : (places[i - 1]! + place) / 2
      const high = i === places.length - 1 ? alongM[alongM.length - 1]! : (places[i + 1]! + place) / 2
      return [place, massBetween(alongM, perM, low, high) / total]
    }),
  )
  return points.map((point) => {
    const sharers = points.filter((other) => other.alongM === point.alongM).length
    return massAt.get(point.alongM)! / sharers
  })
}

function byLoudness(points: readonly HeardPoint[]): number[] {
  const power = points.map(({ evidence }) => (evidence.overFloorDb === null ? 0 : 10 ** (evidence.overFloorDb / 10)))
  const total = power.reduce((sum, each) => sum + each, 0)
  return power.map((each) => (total > 0 ? each / total : 1 / points.length))
}
