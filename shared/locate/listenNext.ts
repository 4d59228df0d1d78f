import { noPaths, noTransfer, preparePaths, transfer } from '../ground/transfer'
import { depthAt } from '../line/depthAt'
import { acrossToSource } from '../line/distanceToSource'
import { linePath } from '../line/linePath'
import type { LocateAnswer } from './answer'
import type { Facts } from './facts'
import { densityQuantile, shortestWindow } from './window'

/** Places the expectation runs over: quantiles of the posterior. */
const STAND_INS = 24
/** Outcomes of a reading around its expectation, in standard deviations, with their weights (Gauss-Hermite, 3 nodes). */
const OUTCOMES = [
  { z: -Math.sqrt(3), weight: 1 / 6 },
  { z: 0, weight: 2 / 3 },
  { z: Math.sqrt(3), weight: 1 / 6 },
]
/** How well one more setting-down tells a level, dB: mostly its unknown gain. Chosen with the fit's own gain. */
const READING_SD_DB = 3
/** Advice beyond this many places helps nobody. */
const MOST_ADVICE = 3
/** Frequency whose fall-off stands for all bands, kHz. */
const SPEAKING_KHZ = 0.5

/**
 * Where one more setting-down would shrink the window most, by expectation over what it may read.
 *
 * Each place tried is a new point on the line, half way between the points around the window, or beside it when the
 * route is unsure. For every stand-in of the leak's place the reading is predicted by the ground's law, the density is
 * weighted by each outcome's likelihood, and the widths of the new windows are averaged.
 *
 * @returns Best first; only places that promise at least a tenth off the window.
 */
export function listenNext(facts: Facts): LocateAnswer['listenNext'] {
  const { candidate, grid, scan } = facts
  const widthNow = candidate.windowM[1] - candidate.windowM[0]
  const standIns = Array.from({ length: STAND_INS }, (_, i) => densityQuantile(grid, scan.perM, (i + 0.5) / STAND_INS))
  return candidates(facts)
    .map((place) => ({ ...place, expectedWindowM: expectedWindow(facts, place, standIns) }))
    .filter((place) => place.expectedWindowM < 0.9 * widthNow)
    .sort((a, b) => a.expectedWindowM - b.expectedWindowM || a.alongM - b.alongM || a.offsetM - b.offsetM)
    .slice(0, MOST_ADVICE)
}

/** Round places to a tenth of a metre that are not already points, from a spacing before the window to one past it. */
function candidates({ candidate, spacingM, points, line }: Facts): { alongM: number; offsetM: number }[] {
  const [low, high] = candidate.windowM
  const step = Math.max(0.1, Math.round((spacingM / 4) * 10) / 10)
  const places: { alongM: number; offsetM: number }[] = []
  for (let along = Math.ceil((low - spacingM) / step) * step; along <= high + spacingM; along += step) {
    const alongM = Math.round(along * 10) / 10
    if (points.some((point) => Math.abs(point.alongM - alongM) < step / 2)) continue
    places.push({ alongM, offsetM: 0 })
  }
  const routeSdM = line.routeSdM ?? 0
  const { depthM } = depthAt(line, candidate.alongM)
  if (routeSdM <= depthM / 2) return places
  const middle = Math.round(candidate.alongM * 10) / 10
  return [...places, { alongM: middle, offsetM: depthM }, { alongM: middle, offsetM: -depthM }]
}

function expectedWindow(facts: Facts, place: { alongM: number; offsetM: number }, standIns: readonly number[]): number {
  const { grid, scan, candidate } = facts
  const predicted = predictedLevels(facts, place)
  let sum = 0
  for (const standIn of standIns) {
    const index = Math.round(((standIn - grid[0]!) / (grid[grid.length - 1]! - grid[0]!)) * (grid.length - 1))
    for (const { z, weight } of OUTCOMES) {
      const reading = predicted[index]! + z * READING_SD_DB
      const after = scan.perM.map(
        (density, i) => density * Math.exp(-0.5 * ((reading - predicted[i]!) / READING_SD_DB) ** 2),
      )
      const [low, high] = shortestWindow(grid, after, candidate.windowProbability)
      sum += weight * (high - low)
    }
  }
  return sum / standIns.length
}

/** Level a new reading would show for a leak at each grid place, dB over the floor, with the ground as believed. */
function predictedLevels(
  { grid, line, scan, points }: Facts,
  place: { alongM: number; offsetM: number },
): Float64Array {
  const path = linePath(line)
  const out = noTransfer()
  const paths = noPaths()
  const best = scan.tried.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a))
  const ground = {
    spreading: best.fit.shared[0]!,
    absorptionDbPerMKhz: Math.exp(best.fit.shared[1]!),
    pipeLevelDb: best.fit.shared[2]!,
    pipeLossDbPerMKhz: Math.exp(best.fit.shared[3]!),
  }
  const depthRatio = Math.exp(best.fit.shared[4]!)
  const strength = Math.max(6, ...points.map((point) => point.evidence.overFloorDb ?? 0))
  return grid.map((alongM) => {
    const { depthM } = depthAt(line, alongM)
    const geometry = {
      depthM,
      acrossM: acrossToSource(path, { sourceAlongM: alongM, listenAlongM: place.alongM, offsetM: place.offsetM }),
      alongPipeM: Math.abs(alongM - place.alongM),
      besidePipeM: Math.abs(place.offsetM),
    }
    const over = strength + transfer(ground, preparePaths(geometry, depthRatio, paths), SPEAKING_KHZ, out).db
    return 10 * Math.log10(1 + 10 ** (over / 10))
  })
}
