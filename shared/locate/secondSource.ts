import { dbToPower } from '../base/units'
import { groundPrior } from '../ground/groundPrior'
import { depthAt } from '../line/depthAt'
import { stretchAt } from '../line/stretchAt'
import { logDetectorLikelihood } from './detectorEvidence'
import { shapeLayout } from './fitModel'
import { type Fit, fitSources } from './fitSources'
import { joinedFits } from './joinedFits'
import type { Parameters } from './parameters'
import { logRingLikelihood } from './ringEvidence'
import { densityOf, geometryFrom, logPrior, passedBy, type Scan, type ScanInput, type TriedPlace } from './scanLine'
import type { TriedSource } from './triedSource'

/** Two leaks closer than this, in spacings, are not told from one. Chosen: a point between them and some room. */
const LEAST_APART = 2
/** Places where the second leak is first tried: the best of the one-leak scan far from the first and each other. Chosen. */
const CANDIDATES = { most: 4, apart: 1.5 }
/** Steps of the search for the best places of both, in spacings. */
const CLIMB_STEPS = [0.5, 0.25]
const MOST_CLIMBS = 4
/** Two leaks whose best places are this much worse than one leak, in nepers, are given up before the search. Chosen. */
const HOPELESS = -6
/** Places at which a leak is tried round its best one, in spacings from it. */
const AROUND = [0.12, 0.25, 0.5, 1, 2]
/** Below the edge of what was tried round a place, nepers a spacing. */
const OUTSIDE = -30

/**
 * ln of the odds of a second leak before it was looked for. Calibrated on the synthetic yard so that at most one
 * single-leak sweep in twenty is given one: chance of a second leak and what a free spectrum of its own costs it.
 */
const BEFORE = -1.2
/**
 * A second leak is faint when it nowhere stands so far over everything else, dB, and the rings say less for it than
 * this, nepers: a passing noise explains that as well. Chosen.
 */
const FAINT = { overRestDb: 4, ringNepers: 2 }
/** What a second leak must show beyond that within a spacing of the told inlet or a told noise, or past an end, where an inlet nobody told of may be, nepers. Chosen. */
const BESIDE_KNOWN = -3

/** Two leaks, each with where it may lie while the other is held at its likeliest place. */
export interface TwoSources {
  readonly firstPerM: Float64Array
  readonly secondPerM: Float64Array
  /** That there are two and not one, given that there is any. */
  readonly probability: number
  /** ln of the likelihood of the ring counts with both. */
  readonly logRings: number
  /** The same of what a detector said. */
  readonly logDetector: number
}

interface Pair {
  readonly firstM: number
  readonly secondM: number
  readonly fit: Fit
  readonly logRings: number
  readonly logDetector: number
  /** ln of the evidence of levels, rings and a detector together. */
  readonly logEvidence: number
  /** The same with the prior of both places. */
  readonly logPosterior: number
}

/**
 * Looks for a second leak where one was found.
 *
 * The one-leak scan has its next-best places where a second leak may be; each is tried together with the first, the best
 * pair is moved to its summit, and then each leak is tried at a few places round its own with the other held.
 *
 * The odds are those of the evidence, mean over the places of both, with the ring counts counted twice: a cell's level
 * counts for half (`CELL_SHARE`), and rings tell bubbles from other sounds.
 *
 * @returns `null` where two leaks are less likely than one.
 */
export function secondSource(input: ScanInput, scan: Scan): TwoSources | null {
  const first = scan.tried.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a))
  const others = candidates(input, scan, first)
  const started = others.map((second) => startPair(input, first, second))
  if (started.length === 0) return null
  const start = started.reduce(better)
  if (start.logEvidence < first.logEvidence + HOPELESS) return null
  const best = named(input, climb(input, otherFirst(input, others, start)), first.alongM)
  if (best.logEvidence < first.logEvidence + HOPELESS) return null
  const ringsForBoth = best.logRings - first.logRings
  if (ringsForBoth < FAINT.ringNepers && mostOverRestDb(best) < FAINT.overRestDb) return null
  const firsts = around(input, best, 'firstM')
  const seconds = around(input, best, 'secondM')
  const one = densityOf(
    input,
    firsts.map((pair) => ({ alongM: pair.firstM, logEvidence: pair.logEvidence })),
  )
  const other = densityOf(
    input,
    seconds.map((pair) => ({ alongM: pair.secondM, logEvidence: pair.logEvidence })),
  )
  const logOdds =
    one.logEvidence +
    other.logEvidence -
    best.logEvidence -
    scan.logEvidence +
    ringsForBoth +
    BEFORE +
    (isBesideKnown(input, best) ? BESIDE_KNOWN : 0)
  if (logOdds < 0) return null
  return {
    firstPerM: one.perM,
    secondPerM: other.perM,
    probability: 1 / (1 + Math.exp(-logOdds)),
    logRings: best.logRings,
    logDetector: best.logDetector,
  }
}

/** The one nearer to the likeliest single leak is the first. */
function named({ model }: ScanInput, pair: Pair, firstM: number): Pair {
  if (Math.abs(pair.firstM - firstM) <= Math.abs(pair.secondM - firstM)) return pair
  const at = shapeLayout(model).count
  const bands = model.bandKhz.length
  const shared = pair.fit.shared.slice()
  shared.copyWithin(at, at + bands, at + 2 * bands)
  shared.set(pair.fit.shared.subarray(at, at + bands), at + bands)
  return { ...pair, firstM: pair.secondM, secondM: pair.firstM, fit: { ...pair.fit, shared } }
}

/** How far the second stands over everything else, the first with it, where it stands out most, dB. */
function mostOverRestDb({ fit }: Pair): number {
  const [first, second] = fit.leaksOverFloorDb
  return second!.reduce(
    (most, overDb, k) => Math.max(most, overDb - 10 * Math.log10(1 + dbToPower(first![k]!))),
    Number.NEGATIVE_INFINITY,
  )
}

/** True beside a known source, or past an end where an inlet that nobody told of may stand. */
function isBesideKnown({ line, spacingM, range }: ScanInput, { secondM }: Pair): boolean {
  if (line.airInletM === null && (secondM < range[0] || secondM > range[1])) return true
  const places = [...(line.airInletM === null ? [] : [line.airInletM]), ...line.noises.map((noise) => noise.atM)]
  return places.some((place) => Math.abs(place - secondM) < spacingM)
}

/** Summits of the one-leak evidence that could be another leak, the best first; those past an end stand for the end. */
function candidates({ spacingM, range }: ScanInput, { tried }: Scan, first: TriedPlace): TriedPlace[] {
  const onLine = (alongM: number) => Math.min(range[1], Math.max(range[0], alongM))
  const triedNear = (alongM: number) =>
    tried.reduce((a, b) => (Math.abs(b.alongM - alongM) < Math.abs(a.alongM - alongM) ? b : a))
  const summits = tried.filter(({ alongM, logEvidence }, i) => {
    const before = tried[i - 1]?.logEvidence ?? Number.NEGATIVE_INFINITY
    const after = tried[i + 1]?.logEvidence ?? Number.NEGATIVE_INFINITY
    return logEvidence >= before && logEvidence >= after && Math.abs(alongM - first.alongM) >= LEAST_APART * spacingM
  })
  const chosen: TriedPlace[] = []
  for (const { alongM } of summits.sort((a, b) => b.logEvidence - a.logEvidence || a.alongM - b.alongM)) {
    if (chosen.length === CANDIDATES.most) break
    const summit = triedNear(onLine(alongM))
    if (Math.abs(summit.alongM - first.alongM) < LEAST_APART * spacingM) continue
    if (chosen.every((each) => Math.abs(each.alongM - summit.alongM) >= CANDIDATES.apart * spacingM)) {
      chosen.push(summit)
    }
  }
  return chosen
}

/** The same second leak with another first, where that explains more: the loudest summit may have been of both. */
function otherFirst(input: ScanInput, others: readonly TriedPlace[], start: Pair): Pair {
  return others
    .filter(({ alongM }) => Math.abs(alongM - start.secondM) >= LEAST_APART * input.spacingM)
    .slice(0, 1)
    .map(({ alongM }) => moved(input, start, 'firstM', alongM))
    .reduce(better, start)
}

/** Both at once, from the fit of the first and the spectrum that the second had when it was tried alone. */
function startPair(input: ScanInput, first: TriedPlace, second: TriedPlace): Pair {
  return tryPair(input, first.alongM, second.alongM, joinedFits(input.model, first.fit, second.fit), true)
}

function tryPair(input: ScanInput, firstM: number, secondM: number, start: Parameters, trusting = false): Pair {
  const { line, model, known } = input
  const ground = groundPrior(stretchAt(line, firstM)?.cover ?? 'soil', depthAt(line, firstM).told)
  const [a, b] = [passedBy(line, firstM, model), passedBy(line, secondM, model)]
  const passed = a.map((each, k) => each || b[k]!)
  const leaks: TriedSource[] = [firstM, secondM].map((alongM) => ({
    kind: 'leak',
    geometry: geometryFrom(line, alongM, model),
    passedBy: passed,
  }))
  const fit = fitSources(model, [...leaks, ...known], ground, start, trusting)
  const logRings = logRingLikelihood(model.settings, fit.leaksOverFloorDb, passed)
  const logDetector = logDetectorLikelihood(model.settings, fit.leaksOverFloorDb, passed)
  const logEvidence = fit.logEvidence + logRings + logDetector
  const logPosterior = logEvidence + logPrior(input, firstM) + logPrior(input, secondM)
  return { firstM, secondM, fit, logRings, logDetector, logEvidence, logPosterior }
}

function moved(input: ScanInput, pair: Pair, which: 'firstM' | 'secondM', alongM: number): Pair {
  const places = { firstM: pair.firstM, secondM: pair.secondM, [which]: alongM }
  return tryPair(input, places.firstM, places.secondM, pair.fit)
}

/** Moves one leak, then the other, by ever smaller steps to where both explain the sweep best. */
function climb(input: ScanInput, start: Pair): Pair {
  let best = start
  for (const step of CLIMB_STEPS) {
    for (const which of ['secondM', 'firstM'] as const) best = climbOne(input, best, which, step * input.spacingM)
  }
  return best
}

function climbOne(input: ScanInput, start: Pair, which: 'firstM' | 'secondM', stepM: number): Pair {
  let best = [-stepM, stepM]
    .map((step) => moved(input, start, which, start[which] + step))
    .filter((pair) => areApart(input, pair))
    .reduce(better, start)
  const direction = Math.sign(best[which] - start[which])
  for (let i = 0; direction !== 0 && i < MOST_CLIMBS; i++) {
    const next = moved(input, best, which, best[which] + direction * stepM)
    if (next.logPosterior <= best.logPosterior || !areApart(input, next)) break
    best = next
  }
  return best
}

/** One leak at places round its best one, the other held; in order of along, the last on each side far down. */
function around(input: ScanInput, best: Pair, which: 'firstM' | 'secondM'): Pair[] {
  const side = (sign: number) => {
    const pairs = [best]
    for (const spacings of AROUND) {
      const pair = moved(input, pairs[pairs.length - 1]!, which, best[which] + sign * spacings * input.spacingM)
      pairs.push(pair)
      if (pair.logEvidence < best.logEvidence - 8) break
    }
    const last = pairs[pairs.length - 1]!
    return [
      ...pairs.slice(1),
      { ...last, [which]: last[which] + sign * input.spacingM, logEvidence: last.logEvidence + OUTSIDE },
    ]
  }
  return [...side(-1).reverse(), best, ...side(1)]
}

function areApart({ spacingM }: ScanInput, { firstM, secondM }: Pair): boolean {
  return Math.abs(firstM - secondM) >= LEAST_APART * spacingM
}

function better(a: Pair, b: Pair): Pair {
  return b.logPosterior > a.logPosterior ? b : a
}
