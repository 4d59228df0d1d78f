import { logSumExp } from '../base/statistics'
import { groundPrior } from '../ground/groundPrior'
import type { Geometry } from '../ground/transfer'
import { depthAt } from '../line/depthAt'
import { acrossToSource } from '../line/distanceToSource'
import type { Line } from '../line/line'
import { linePath } from '../line/linePath'
import { stretchAt } from '../line/stretchAt'
import { logDetectorLikelihood } from './detectorEvidence'
import type { FitModel } from './fitModel'
import { type ColdStart, type Fit, fitSources } from './fitSources'
import type { Parameters } from './parameters'
import { logRingLikelihood } from './ringEvidence'
import type { SettingDown } from './settingDown'
import type { TriedSource } from './triedSource'

/**
 * Past an end the prior falls to 1/e within so many spacings. The ends of a told line are the plugs of its test: what
 * leaks lies between them, and they are known as well as the points that are taped from them. Told points may stop short.
 * Whether the sound comes from past an end is asked as if a told length were `doubted`. Chosen.
 */
const PAST_END_SPACINGS = { toldLength: 0.05, doubted: 0.2, onlyPoints: 1 }
/** Nothing is heard from further off than this many spacings that the nearest point would not tell as well. Chosen. */
const HEARD_SPACINGS = 5
/** Steps of half a spacing from one place to the next where no point is near. Even. */
const FAR_STEPS = 20
/** A neighbour whose evidence is better by this, in nepers, may have found what a cold start missed. */
const CLEARLY_BETTER = 3
/** Places this many nepers of evidence below the best are not looked at more closely. */
const REFINE_WITHIN = [14, 9, 6]
/** Places are fitted anew from a neighbour within so many nepers of the best that is better by so many. Chosen. */
const SMOOTH_WITHIN = 14
const SMOOTH_FROM = 0.5
/** Where four neighbours differ by less than this, in nepers, a straight line between them is good enough. Chosen. */
const FLAT = 1

/** Power of the posterior that is shown: what the fit leaves out makes it a little too sure. Calibrated on the synthetic yard. */
const CALM = 0.85

export interface TriedEvidence {
  readonly alongM: number
  /** ln of the evidence of levels and rings together. */
  readonly logEvidence: number
}

/** A place that was tried with the best fit found there. */
export interface TriedPlace extends TriedEvidence {
  readonly fit: Fit
  /** ln of the likelihood of the ring counts, and of what a detector said. */
  readonly logRings: number
  readonly logDetector: number
}

/** The evidence for a leak along the line. */
export interface Scan {
  /** Places tried, in order of along; closer together where it matters. */
  readonly tried: readonly TriedPlace[]
  /** ln of the prior-weighted mean evidence over all places: the evidence that there is such a source. */
  readonly logEvidence: number
  /** On the grid given: density of the place, integrating to 1. */
  readonly perM: Float64Array
}

/** What the scan is told beside the model. */
export interface ScanInput {
  readonly model: FitModel
  readonly line: Line
  /** Even grid of places, m along. */
  readonly grid: Float64Array
  readonly spacingM: number
  /** First and last place of the line, m. */
  readonly range: readonly [number, number]
  /** Sources that are known to be there: inlet and told noises. */
  readonly known: readonly TriedSource[]
}

/** Geometry from a place along the line to every setting-down, over bends and offsets. */
export function geometryFrom(
  line: Line,
  alongM: number,
  model: FitModel,
  mostDepthM = Number.POSITIVE_INFINITY,
): Geometry[] {
  const path = linePath(line)
  const depthM = Math.min(mostDepthM, depthAt(line, alongM).depthM)
  return model.settings.map((setting) => ({
    depthM,
    acrossM: acrossToSource(path, {
      sourceAlongM: alongM,
      listenAlongM: setting.alongM,
      offsetM: setting.offsetM,
    }),
    alongPipeM: Math.abs(setting.alongM - alongM),
    besidePipeM: Math.abs(setting.offsetM),
    ...onSlab(line, setting, alongM),
  }))
}

/** Of a setting-down on a slab: from above the source to the slab's nearest place on the line, and from there on. */
function onSlab(line: Line, setting: SettingDown, alongM: number): Pick<Geometry, 'toSlabM' | 'alongSlabM'> {
  const stretch = line.stretches[setting.stretch]
  if (stretch?.cover !== 'slab') return {}
  const path = linePath(line)
  const footM = Math.min(Math.max(alongM, stretch.fromM), stretch.toM)
  return {
    toSlabM: acrossToSource(path, { sourceAlongM: alongM, listenAlongM: footM, offsetM: 0 }),
    alongSlabM: acrossToSource(path, { sourceAlongM: footM, listenAlongM: setting.alongM, offsetM: setting.offsetM }),
  }
}

/**
 * Tries a leak all along the line and returns where it may lie.
 *
 * A coarse pass, twice a spacing, starts at every other place from the levels themselves and at the others from the
 * better of both neighbours, so that neither direction along the line is favoured; then places between are tried
 * wherever the evidence is near the best, and those once more from better neighbours. Between tried places the log
 * evidence is joined by straight lines.
 */
export function scanLine(input: ScanInput, before: readonly TriedPlace[]): Scan {
  const coarse = coarsePass(input, before)
  const tried = smoothed(
    input,
    REFINE_WITHIN.reduce((places, within) => refine(input, places, within), coarse),
  )
  return { tried, ...densityOf(input, tried) }
}

/** Evidence and density over the grid from places tried, in order of along. */
export function densityOf(
  input: ScanInput,
  tried: readonly TriedEvidence[],
): { logEvidence: number; perM: Float64Array } {
  const logPosterior = Float64Array.from(input.grid, (along) => logPrior(input, along) + interpolated(tried, along))
  const step = input.grid[1]! - input.grid[0]!
  const logEvidence = logSumExp(logPosterior) + Math.log(step)
  const calmed = logPosterior.map((log) => CALM * (log - logEvidence))
  const logTotal = logSumExp(calmed) + Math.log(step)
  return { logEvidence, perM: calmed.map((log) => Math.exp(log - logTotal)) }
}

/** ln of the prior density of the leak's place, 1/m: even along the line, falling past its ends. */
export function logPrior({ range, line, spacingM }: Ends, alongM: number): number {
  const fallM = spacingM * (line.lengthM === null ? PAST_END_SPACINGS.onlyPoints : PAST_END_SPACINGS.toldLength)
  return -pastM(range, alongM) / fallM - Math.log(range[1] - range[0] + 2 * fallM)
}

/** Where a line ends, and how well that is known. */
type Ends = Pick<ScanInput, 'range' | 'line' | 'spacingM'>

/**
 * The same density if a told length were known less well: the leak is looked for between the plugs, but what comes from
 * past them is not to be passed over.
 *
 * @param perM On the grid, integrating to 1; so does what is returned.
 */
export function doubtingEnds({ range, line, spacingM, grid }: Ends & Pick<ScanInput, 'grid'>, perM: Float64Array) {
  if (line.lengthM === null) return perM
  const { toldLength, doubted } = PAST_END_SPACINGS
  const gain = (CALM * (1 / toldLength - 1 / doubted)) / spacingM
  const freed = perM.map((density, i) => density * Math.exp(gain * pastM(range, grid[i]!)))
  const total = freed.reduce((sum, density) => sum + density, 0) * (grid[1]! - grid[0]!)
  return freed.map((density) => density / total)
}

function pastM(range: readonly [number, number], alongM: number): number {
  return Math.max(range[0] - alongM, alongM - range[1], 0)
}

/** Cold starts at every second place of the coarse pass, for what they tell of how far levels scatter. */
export function coldPass(input: ScanInput): TriedPlace[] {
  return coarsePlaces(input)
    .filter(({ isCold }) => isCold)
    .map(({ alongM }, i) => tryPlace(input, alongM, i % 2 === 0 ? 'with pipe' : 'without pipe'))
}

function coarsePass(input: ScanInput, before: readonly TriedPlace[]): TriedPlace[] {
  const places = coarsePlaces(input)
  const starts = new Map(before.map((place) => [place.alongM, place.fit]))
  const cold = places.map(({ alongM }) => {
    const start = starts.get(alongM)
    return start === undefined ? null : tryBoth(input, alongM, start)
  })
  const all = places.map(({ alongM }, i) => {
    const near = [cold[i - 1], cold[i + 1]].filter((each) => each !== undefined && each !== null)
    return cold[i] ?? tryBoth(input, alongM, near.reduce(better).fit)
  })
  return all.map((place, i) => {
    const best = [all[i - 1], all[i + 1]].filter((each) => each !== undefined).reduce(better)
    if (best.logEvidence < place.logEvidence + CLEARLY_BETTER) return place
    return better(place, tryBoth(input, place.alongM, best.fit))
  })
}

/** Two places a spacing where points can hear, every second one a cold start; far from all points a few will do. */
function coarsePlaces({ grid, spacingM, model }: ScanInput): { alongM: number; isCold: boolean }[] {
  const first = grid[0]!
  const last = grid[grid.length - 1]!
  const steps = 2 * Math.max(1, Math.ceil((last - first) / spacingM))
  const reaches = (alongM: number, spacings: number) =>
    model.settings.some((setting) => Math.abs(setting.alongM - alongM) <= spacings * spacingM)
  return Array.from({ length: steps + 1 }, (_, i) => ({
    alongM: first + ((last - first) * i) / steps,
    isCold: i % 2 === 0,
    isEnd: i === 0 || i === steps,
    isSparse: i % FAR_STEPS === 0,
  })).filter(
    ({ alongM, isCold, isEnd, isSparse }) =>
      isEnd || isSparse || reaches(alongM, isCold ? HEARD_SPACINGS + 1 : HEARD_SPACINGS),
  )
}

function refine(input: ScanInput, places: readonly TriedPlace[], within: number): TriedPlace[] {
  const best = Math.max(...places.map((place) => place.logEvidence))
  return places.flatMap((place, i) => {
    const next = places[i + 1]
    if (!next || Math.max(place.logEvidence, next.logEvidence) < best - within) return [place]
    const around = places.slice(Math.max(0, i - 1), i + 3).map((each) => each.logEvidence)
    if (Math.max(...around) - Math.min(...around) < FLAT) return [place]
    return [place, tryPlace(input, (place.alongM + next.alongM) / 2, better(place, next).fit)]
  })
}

/**
 * Places near the best once more from a neighbour that came out better, along the line and back: a fit may end beside its
 * summit, and the density would have a hole there.
 */
function smoothed(input: ScanInput, places: readonly TriedPlace[]): TriedPlace[] {
  const result = [...places]
  const best = places.reduce(better).logEvidence
  const again = (i: number, { logEvidence, fit }: TriedPlace) => {
    const here = result[i]!
    if (logEvidence < Math.max(best - SMOOTH_WITHIN, here.logEvidence + SMOOTH_FROM)) return
    result[i] = better(here, tryPlace(input, here.alongM, fit))
  }
  for (let i = 1; i < result.length; i++) again(i, result[i - 1]!)
  for (let i = result.length - 2; i >= 0; i--) again(i, result[i + 1]!)
  return result
}

function better(a: TriedPlace, b: TriedPlace): TriedPlace {
  return b.logEvidence > a.logEvidence ? b : a
}

/** From another place's fit: once as it stands, once trusting all clips anew, since which are disturbed is a leap. */
function tryBoth(input: ScanInput, alongM: number, start: Parameters): TriedPlace {
  return better(tryPlace(input, alongM, start), tryPlace(input, alongM, start, true))
}

/** Best fit at a place, from another place's fit or from the levels themselves. */
export function tryPlace(
  input: ScanInput,
  alongM: number,
  start: Parameters | ColdStart,
  trusting = typeof start === 'string',
): TriedPlace {
  const { line, model, known } = input
  const ground = groundPrior(stretchAt(line, alongM)?.cover ?? 'soil', depthAt(line, alongM).told)
  const sources: TriedSource[] = [
    { kind: 'leak', geometry: geometryFrom(line, alongM, model), passedBy: passedBy(line, alongM, model) },
    ...known,
  ]
  const fit = fitSources(model, sources, ground, start, trusting)
  const logRings = logRingLikelihood(model.settings, fit.leaksOverFloorDb, sources[0]!.passedBy)
  const logDetector = logDetectorLikelihood(model.settings, fit.leaksOverFloorDb, sources[0]!.passedBy)
  return { alongM, fit, logRings, logDetector, logEvidence: fit.logEvidence + logRings + logDetector }
}

/** Which settings-down stand between the air inlet and a leak; none when no inlet was told. */
export function passedBy(line: Line, alongM: number, model: FitModel): boolean[] {
  const inlet = line.airInletM
  return model.settings.map(
    (setting) =>
      inlet !== null && Math.min(inlet, alongM) <= setting.alongM && setting.alongM <= Math.max(inlet, alongM),
  )
}

function interpolated(tried: readonly TriedEvidence[], alongM: number): number {
  let low = 0
  let high = tried.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (tried[middle]!.alongM <= alongM) low = middle
    else high = middle
  }
  const a = tried[low]!
  const b = tried[high]!
  const part = Math.min(1, Math.max(0, (alongM - a.alongM) / (b.alongM - a.alongM)))
  return a.logEvidence + part * (b.logEvidence - a.logEvidence)
}
