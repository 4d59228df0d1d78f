import type { Facts } from './facts'
import { type Place, readingForecast } from './readingForecast'
import type { TriedPlace } from './scanLine'
import { cumulativeOf, densityQuantile, massUpTo } from './window'

/** Even places that stand for the density where it matters, and the share of it left out on each side. */
const GRID = { places: 96, leftOut: 0.002 }
/** Places of the leak that the expectation runs over: quantiles of the density. */
const STAND_INS = 16
/** A normal spread by three values in standard deviations, with their weights (Gauss-Hermite, 3 nodes). */
const NODES = [
  { z: -Math.sqrt(3), weight: 1 / 6 },
  { z: 0, weight: 2 / 3 },
  { z: Math.sqrt(3), weight: 1 / 6 },
]

/** Says how wide the window is expected to be once all the places given were listened to as well, m. */
export type WindowForecast = (places: readonly Place[]) => number

/**
 * Prepares the expectation of the window's width after more readings.
 *
 * For every stand-in of the leak the readings are forecast, the density is weighted by how likely each outcome is under
 * each other place, and the widths of the new windows are averaged. An outcome strays along the row of forecasts, which
 * is the direction that moves the window.
 *
 * @param besideSdM How far the pipe may lie beside the told route, standard deviation, m; 0 where the route is sure.
 */
export function windowForecast(facts: Facts, besideSdM: number): WindowForecast {
  const { candidate, grid, scan } = facts
  const fromM = densityQuantile(grid, scan.perM, GRID.leftOut)
  const stepM = (densityQuantile(grid, scan.perM, 1 - GRID.leftOut) - fromM) / GRID.places
  const cumulative = cumulativeOf(grid, scan.perM)
  const below = (cell: number) => massUpTo(grid, cumulative, fromM + cell * stepM)
  const masses = Float64Array.from({ length: GRID.places }, (_, i) => below(i + 1) - below(i))
  const standIns = standInsOf(masses)
  const beside = besideSdM > 0 ? NODES : NODES.filter(({ z }) => z === 0).map((node) => ({ ...node, weight: 1 }))
  const weave = weaveBetween(facts, fromM, stepM)
  const reaches = beside.map(({ z }) =>
    readingForecast(
      facts,
      weave.tried.map((tried) => ({ tried, besideM: z * besideSdM })),
    ),
  )
  const share = candidate.windowProbability
  const scale = (candidate.windowM[1] - candidate.windowM[0]) / (cellsHolding(masses, share) || 1)

  return (places) => {
    // Rows of a grid place, one a way the pipe may lie beside the route.
    const rows = reaches.map((forecast) => {
      const readings = places.map(forecast)
      return weave.at.map(({ index, part }) => readings.map((rows) => between(rows, index, part)))
    })
    let sum = 0
    for (const standIn of standIns) {
      for (const [y, { weight }] of beside.entries()) {
        const apart = rows.map((at) => at.map((row) => distance(row, rows[y]![standIn]!)))
        sum += weight * expectedCells({ apart, beside, masses, standIn, share })
      }
    }
    return (scale * sum) / standIns.length
  }
}

/** Grid cells at even quantiles of the mass. */
function standInsOf(masses: Float64Array): number[] {
  const total = masses.reduce((sum, mass) => sum + mass, 0)
  const standIns: number[] = []
  let below = 0
  for (const [cell, mass] of masses.entries()) {
    below += mass
    while (standIns.length < STAND_INS && (standIns.length + 0.5) * total < below * STAND_INS) standIns.push(cell)
  }
  return standIns
}

/** The tried places round the grid, and between which two of them each grid cell's middle lies. */
function weaveBetween({ scan }: Facts, fromM: number, stepM: number) {
  const toM = fromM + GRID.places * stepM
  const first = Math.max(
    0,
    scan.tried.findLastIndex(({ alongM }) => alongM <= fromM),
  )
  const after = scan.tried.findIndex(({ alongM }) => alongM >= toM)
  const tried: TriedPlace[] = scan.tried.slice(first, after < 0 ? undefined : after + 1)
  const at = Array.from({ length: GRID.places }, (_, i) => {
    const alongM = fromM + (i + 0.5) * stepM
    const next = tried.findIndex((place) => place.alongM > alongM)
    const index = Math.max(0, (next < 0 ? tried.length : next) - 1)
    const a = tried[index]!.alongM
    const b = tried[index + 1]?.alongM ?? a
    return { index, part: b > a ? Math.min(1, Math.max(0, (alongM - a) / (b - a))) : 0 }
  })
  return { tried, at }
}

function between(rows: readonly Float64Array[], index: number, part: number): Float64Array {
  const a = rows[index]!
  const b = rows[index + 1] ?? a
  return a.map((value, i) => value + part * (b[i]! - value))
}

function distance(a: readonly Float64Array[], b: readonly Float64Array[]): number {
  let square = 0
  for (const [k, row] of a.entries()) {
    for (let i = 0; i < row.length; i++) square += (row[i]! - b[k]![i]!) ** 2
  }
  return Math.sqrt(square)
}

/** Width of the window after the readings, averaged over how they may stray, for one leak that may be; grid cells. */
function expectedCells(at: {
  /** From each grid place (second index), for each way the pipe may lie (first), to the stand-in's forecast. */
  readonly apart: readonly (readonly number[])[]
  readonly beside: readonly { readonly weight: number }[]
  readonly masses: Float64Array
  readonly standIn: number
  readonly share: number
}): number {
  const { apart, beside, masses, standIn, share } = at
  const after = new Float64Array(masses.length)
  let sum = 0
  for (const { z, weight } of NODES) {
    for (let i = 0; i < masses.length; i++) {
      let likelihood = 0
      for (const [y, way] of beside.entries()) {
        const d = apart[y]![i]!
        likelihood += way.weight * Math.exp(-0.5 * d * d + z * Math.sign(i - standIn) * d)
      }
      after[i] = masses[i]! * likelihood
    }
    sum += weight * cellsHolding(after, share)
  }
  return sum
}

/** Length of the shortest run of cells that holds a share of the mass, its last cell counted in part. */
function cellsHolding(masses: Float64Array, share: number): number {
  const needed = share * masses.reduce((sum, mass) => sum + mass, 0)
  let best = masses.length
  let held = 0
  let end = 0
  for (let start = 0; start < masses.length; start++) {
    while (held < needed && end < masses.length) held += masses[end++]!
    if (held < needed) break
    const last = masses[end - 1]!
    best = Math.min(best, end - start - (last > 0 ? Math.min(1, (held - needed) / last) : 0))
    held -= masses[start]!
  }
  return best
}
