import type { Problem } from '../base/problem'
import { logSumExp } from '../base/statistics'
import { groundPrior } from '../ground/groundPrior'
import { depthAt } from '../line/depthAt'
import type { Cover, Line } from '../line/line'
import { linePath } from '../line/linePath'
import { lineRange } from '../line/lineRange'
import { placeAlong } from '../line/placeAlong'
import { tapeDistance } from '../line/tapeDistance'
import type { LocateAnswer, Reason, Sounding, Source } from './answer'
import { detectorPart } from './detectorPart'
import { detectorReason } from './detectorReason'
import { digFirst } from './digFirst'
import { digReason } from './digReason'
import { type FitModel, FLOOR_HABITS, type FloorHabit, fitModel } from './fitModel'
import { fitSources } from './fitSources'
import { listenNext } from './listenNext'
import { pointEvidence } from './pointEvidence'
import { rankPoints } from './rankPoints'
import { reasonsFor } from './reasons'
import { logRingLikelihood } from './ringEvidence'
import { coldPass, geometryFrom, type Scan, scanLine, tryPlace } from './scanLine'
import { searchGrid, spacingM } from './searchGrid'
import { secondSource, type TwoSources } from './secondSource'
import { isUsable, settingsDown, weighedBands } from './settingsDown'
import type { TriedSource } from './triedSource'
import { judge } from './verdict'
import { densityQuantile, shortestWindow } from './window'

/** Share of its own density that a source's window holds. */
export const WINDOW_PROBABILITY = 0.8
/** Spacing assumed for the search when all points lie in one place, m. Chosen. */
const LONE_SPACING_M = 1
/** Points a centimetre apart on a line of kilometres are searched as if they stood further apart. Chosen. */
const MOST_SPACINGS = 1000
/** Fewest places with a usable air-on clip from which a place is worked out. */
export const FEWEST_POINTS = 3
/** That there is a source to be heard, before any clip was: a line is listened to after it failed its test. Chosen. */
const PRIOR_OF_SOURCE = 0.9

/** The plainest habit of the floor is taken unless another is so much likelier, nepers. Chosen. */
const HABIT_NEPERS = 5

/** Air is let in, and machines stand, at or near the surface, m. Chosen. */
const SURFACE_DEPTH_M = 0.15

export interface LocateInput {
  readonly line: Line
  readonly soundings: readonly Sounding[]
}

/**
 * From what the clips say to where to dig: README.md of this folder has the rules.
 *
 * The order of the soundings plays no part; nor does the gain of any setting-down beyond what rounding leaves.
 *
 * @param input Line as told and every clip of the sweep with its evidence, spoilt and missing ones too.
 */
export function locate(input: LocateInput): LocateAnswer {
  const { line, soundings } = input
  const points = pointEvidence(soundings)
  const heard = new Set(points.filter((point) => point.evidence.levelDbFs !== null).map((point) => point.alongM)).size
  const clips = soundings.map((sounding) => ({
    file: sounding.row.file,
    used: isUsable(sounding),
    problems: allProblems(sounding),
  }))
  const frame = searchFrame(input)
  if (frame === null || heard < FEWEST_POINTS) {
    return {
      verdict: 'unsure',
      reasons: [{ key: 'reason_too_few_points', values: { points: heard, needed: FEWEST_POINTS } }],
      sources: [],
      points: rankPoints(points, null),
      clips,
      density:
        frame === null ? { alongM: [], perM: [] } : { alongM: [...frame.grid], perM: [...frame.grid].map(() => 0) },
      listenNext: [],
      digFirst: [],
      detector: null,
    }
  }

  const { model, known, scan, two, logNone, ringSupport, detectorSupport } = fitSweep(input, frame)
  const logOdds = scan.logEvidence + Math.log(PRIOR_OF_SOURCE) - (logNone + Math.log(1 - PRIOR_OF_SOURCE))
  const probability = 1 / (1 + Math.exp(-logOdds))
  const sourceFrom = (perM: Float64Array, chance: number) =>
    candidateSource({ line, perM, grid: frame.grid, probability: chance, points })
  const candidate = sourceFrom(scan.perM, probability)
  const second = two && sourceFrom(two.secondPerM, probability * two.probability)
  const perM = two ? scan.perM.map((density, i) => density + two.probability * two.secondPerM[i]!) : scan.perM
  const facts = {
    line,
    model,
    scan,
    grid: frame.grid,
    range: frame.range,
    spacingM: frame.spacingM,
    candidate,
    points,
    soundings,
    known,
    ringSupport,
    detectorSupport,
  }
  const { verdict, why } = judge(facts)
  const detector = detectorPart(soundings, detectorSupport)
  const sources = verdict === 'no leak heard' ? [] : [candidate, ...(second ? [second] : [])]
  const expected = sources.length > 0 ? probability : 0
  const windows = sources.map((source) => source.windowM)
  const pieces = digFirst(line, windows, { alongM: frame.grid, perM })
  return {
    verdict,
    reasons: [
      ...why,
      ...reasonsFor(facts, verdict),
      ...secondReason(sources[1]),
      ...detectorReason(detector),
      ...(verdict === 'located' ? digReason(pieces) : []),
    ],
    sources,
    points: rankPoints(points, { alongM: frame.grid, perM }),
    clips,
    density: { alongM: [...frame.grid], perM: [...perM].map((density) => density * expected) },
    listenNext: verdict === 'no leak heard' ? [] : listenNext(facts, why),
    digFirst: pieces,
    detector,
  }
}

function allProblems(sounding: Sounding): Problem[] {
  return [...sounding.problems, ...(sounding.evidence?.problems ?? [])]
}

interface Frame {
  readonly range: readonly [number, number]
  readonly spacingM: number
  readonly grid: Float64Array
}

/** Where to search; `null` when there is neither a usable clip nor a told length. */
function searchFrame({ line, soundings }: LocateInput): Frame | null {
  const usable = soundings.filter(isUsable).map((sounding) => sounding.row.alongM)
  const range = lineRange(line, usable)
  if (range === null) return null
  const spacing = Math.max(spacingM(usable) ?? LONE_SPACING_M, (range.toM - range.fromM) / MOST_SPACINGS)
  const ends = [range.fromM, range.toM] as const
  return { range: ends, spacingM: spacing, grid: searchGrid(ends, spacing) }
}

/** ln of the odds of a habit of the floor against the plainest; the scan's evidence stands without its habit's. */
function logHabitPrior(floor: FloorHabit): number {
  return floor === FLOOR_HABITS.at(-1) ? 0 : -HABIT_NEPERS
}

/** The joint fit with and without a leak. */
function fitSweep({ line, soundings }: LocateInput, frame: Frame) {
  const sweeps = [...new Set(soundings.filter(isUsable).map((sounding) => sounding.row.sweep))].sort()
  const settings = settingsDown(soundings, line, sweeps)
  const anyEvidence = soundings.find(isUsable)!.evidence!
  const plain = fitModel(
    settings,
    weighedBands(anyEvidence).map((band) => band.midHz),
    sweeps.length,
  )
  const known: TriedSource[] = [
    ...(line.airInletM === null
      ? []
      : [{ kind: 'inlet' as const, geometry: geometryFrom(line, line.airInletM, plain, SURFACE_DEPTH_M) }]),
    ...line.noises.map((noise) => ({
      kind: 'noise' as const,
      geometry: geometryFrom(line, noise.atM, plain, SURFACE_DEPTH_M),
    })),
  ]
  const where = { line, grid: frame.grid, spacingM: frame.spacingM, range: frame.range, known }
  const middle = (frame.range[0] + frame.range[1]) / 2
  const ground = groundPrior(commonCover(plain), depthAt(line, middle).told)
  const noLeak = fitSources(plain, known, ground, 'with pipe')
  const cold = coldPass({ model: plain, ...where })
  const first = cold.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a))
  const models = FLOOR_HABITS.map((floor) => ({ ...plain, noise: { ...first.fit.noise(), floor } }))
  const logHabits = models.map((each) => tryPlace({ model: each, ...where }, first.alongM, first.fit).logEvidence)
  const weighed = models.map(({ noise }, i) => logHabits[i]! + logHabitPrior(noise.floor))
  const model = models[weighed.indexOf(Math.max(...weighed))]!
  const one = scanLine({ model, ...where }, cold)
  const two = secondSource({ model, ...where }, one)
  // How levels scatter without a leak is not known beforehand: as with one, or as they did without, by each habit.
  const logNones = [model.noise, ...FLOOR_HABITS.map((floor) => ({ ...noLeak.noise(), floor }))].map(
    (noise) => fitSources({ ...plain, noise }, known, ground, noLeak).logEvidence + logHabitPrior(noise.floor),
  )
  const ringsNone = logRingLikelihood(settings, [])
  const best = one.tried.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a))
  return {
    model,
    known,
    scan: two === null ? one : withSecond(one, two),
    two,
    logNone: logSumExp(logNones) - Math.log(logNones.length) - logHabitPrior(model.noise.floor) + ringsNone,
    ringSupport: (two?.logRings ?? best.logRings) - ringsNone,
    detectorSupport: two?.logDetector ?? best.logDetector,
  }
}

/** The scan for the first of two leaks: where it lies with the second held, and the evidence of one or two. */
function withSecond(one: Scan, { firstPerM, probability }: TwoSources): Scan {
  return { tried: one.tried, perM: firstPerM, logEvidence: one.logEvidence - Math.log(Math.max(1e-9, 1 - probability)) }
}

function secondReason(second: Source | undefined): Reason[] {
  if (!second) return []
  return [{ key: 'reason_second_source', values: { second_m: second.alongM, probability: second.probability } }]
}

/** The cover of most settings-down; of equals, the first in alphabet. */
function commonCover({ stretchCovers, stretchOf }: FitModel): Cover {
  const counts = new Map<Cover, number>()
  for (const stretch of stretchOf) counts.set(stretchCovers[stretch]!, (counts.get(stretchCovers[stretch]!) ?? 0) + 1)
  return [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1))[0]![0]
}

function candidateSource({
  line,
  perM,
  grid,
  probability,
  points,
}: {
  readonly line: Line
  readonly perM: Float64Array
  readonly grid: Float64Array
  readonly probability: number
  readonly points: readonly { readonly point: number; readonly alongM: number }[]
}): Source {
  const alongM = densityQuantile(grid, perM, 0.5)
  const path = linePath(line)
  return {
    alongM,
    windowM: shortestWindow(grid, perM, WINDOW_PROBABILITY),
    windowProbability: WINDOW_PROBABILITY,
    probability,
    place: placeAlong(path, alongM),
    tape: tapeDistance(alongM, points, path.alongM.subarray(1, -1)),
  }
}
