import { choleskyInPlace } from '../base/cholesky'
import { type Ground, noPaths, noTransfer, type Paths, preparePaths, transfer } from '../ground/transfer'
import { depthAt } from '../line/depthAt'
import type { Line } from '../line/line'
import { type LinePath, linePath } from '../line/linePath'
import { placeAlong } from '../line/placeAlong'
import { stretchAt } from '../line/stretchAt'
import type { Facts } from './facts'
import { type FitModel, type ShapeLayout, STRETCH, shapeLayout } from './fitModel'
import { SURFACE_DEPTH_M } from './knownSources'
import type { TriedPlace } from './scanLine'

/** A place to set the microphone down, on or beside the line, m. */
export interface Place {
  readonly alongM: number
  /** Positive to the left looking from start to end. */
  readonly offsetM: number
}

/** A leak that may be: where the fit tried one, and how far beside the told route the pipe may lie, m. */
export interface Supposed {
  readonly tried: TriedPlace
  readonly besideM: number
}

/**
 * How a new reading may stray from what is forecast: coupling and tilt of one more setting-down, and each band by
 * itself, dB. Wider than in the fit, because the forecast holds the ground for known; calibrated on the synthetic yard so
 * that windows come out about as wide as forecast.
 */
const STRAY = { gainDb: 3.5, tiltDbPerOctave: 1.5, bandDb: 4.5 }
/** Every so many bands one speaks, for those beside it too: neighbours say nearly the same. Chosen. */
const BAND_STEP = 2
/** Frequency at which a stretch's loss a kHz changes nothing, kHz. */
const MIDDLE_KHZ = 0.5
const LEAST_SPREADING = 0.1
const NEPERS_PER_DB = Math.LN10 / 10

/**
 * Forecasts what a new setting-down would read for each leak that may be, in numbers that each stray by 1, all
 * independent: the distance between two forecasts is how well such a reading tells the two leaks apart.
 *
 * Each leak brings the spectrum and the ground that fitted best with it, so the forecasts differ only as far as the
 * sweep leaves them free to.
 *
 * @returns One row a leak, one number a band that speaks.
 */
export function readingForecast(facts: Facts, supposed: readonly Supposed[]): (place: Place) => Float64Array[] {
  const { line, model } = facts
  const bands = Array.from(model.bandKhz.keys()).filter((b) => b % BAND_STEP === BAND_STEP - 1)
  const factor = strayFactor(bands.map((b) => model.bandOctaves[b]!))
  const best = facts.scan.tried.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a)).fit.shared
  const floor = bands.map((b) => Math.exp(NEPERS_PER_DB * best[best.length - model.bandKhz.length + b]!))
  const site: Site = { facts, bands, floor, path: linePath(line), layout: shapeLayout(model) }
  const leaks = supposed.map((leak) => ({ leak, grounds: new Map<number, StretchGround[]>() }))
  return (place) => {
    const stretch = stretchIndex(line, model, place.alongM)
    return leaks.map(({ leak, grounds }) => {
      const ground = grounds.get(stretch) ?? bands.map((b) => groundOf(site, leak.tried.fit.shared, stretch, b))
      grounds.set(stretch, ground)
      const levels = levelsAt(site, place, leak, ground)
      whiten(levels, factor)
      return levels
    })
  }
}

/** What all forecasts share. */
interface Site {
  readonly facts: Facts
  /** Indices of the bands that speak. */
  readonly bands: readonly number[]
  /** Power of the floor in each of them. */
  readonly floor: readonly number[]
  readonly path: LinePath
  readonly layout: ShapeLayout
}

/** The ground as one stretch and band see it. */
interface StretchGround {
  readonly ground: Ground
  /** What the stretch adds to all that comes from below, dB. */
  readonly addedDb: number
}

/** A source of sound, m; its depth is the line's there, but no more than said. */
interface Emitting {
  readonly alongM: number
  readonly besideM: number
  readonly mostDepthM: number
}

/** Levels of leak, known sources and floor together, dBFS a band. */
function levelsAt(site: Site, place: Place, leak: Supposed, ground: readonly StretchGround[]): Float64Array {
  const { facts, bands, layout } = site
  const { shared } = leak.tried.fit
  const all = facts.model.bandKhz.length
  const moved = noTransfer()
  const powers = Float64Array.from(site.floor)
  const add = (from: number, source: Emitting, addedDb: readonly number[]) => {
    const paths = pathsTo(site, source, place, Math.exp(shared[layout.logDepthRatio]!))
    for (const [i, b] of bands.entries()) {
      const { db } = transfer(ground[i]!.ground, paths, facts.model.bandKhz[b]!, moved)
      powers[i]! += Math.exp(NEPERS_PER_DB * (shared[from + b]! + db + ground[i]!.addedDb + (addedDb[i] ?? 0)))
    }
  }
  const { alongM } = leak.tried
  add(layout.count, { alongM, besideM: leak.besideM, mostDepthM: Number.POSITIVE_INFINITY }, louder(site, leak, ground))
  const { airInletM, noises } = facts.line
  const known = [...(airInletM === null ? [] : [airInletM]), ...noises.map(({ atM }) => atM)]
  for (const [i, at] of known.entries()) {
    add(shared.length - all * (1 + known.length - i), { alongM: at, besideM: 0, mostDepthM: SURFACE_DEPTH_M }, [])
  }
  return powers.map((power) => Math.log(power) / NEPERS_PER_DB)
}

/** A pipe that lies beside the route must be the louder to have read the same on it, dB a band. */
function louder(site: Site, { tried, besideM }: Supposed, ground: readonly StretchGround[]): number[] {
  if (besideM === 0) return []
  const { model } = site.facts
  const depthRatio = Math.exp(tried.fit.shared[site.layout.logDepthRatio]!)
  const over = { alongM: tried.alongM, offsetM: 0 }
  const source = { alongM: tried.alongM, besideM, mostDepthM: Number.POSITIVE_INFINITY }
  const onRoute = pathsTo(site, { ...source, besideM: 0 }, over, depthRatio)
  const beside = pathsTo(site, source, over, depthRatio)
  const moved = noTransfer()
  return site.bands.map((b, i) => {
    const kHz = model.bandKhz[b]!
    const straight = transfer(ground[i]!.ground, onRoute, kHz, moved).db
    return straight - transfer(ground[i]!.ground, beside, kHz, moved).db
  })
}

function pathsTo({ facts: { line }, path }: Site, source: Emitting, place: Place, depthRatio: number): Paths {
  const from = placeAlong(path, source.alongM, source.besideM)
  const to = placeAlong(path, place.alongM, place.offsetM)
  const geometry = {
    depthM: Math.min(source.mostDepthM, depthAt(line, source.alongM).depthM),
    acrossM: Math.hypot(from.xM - to.xM, from.yM - to.yM),
    alongPipeM: Math.abs(source.alongM - place.alongM),
    besidePipeM: Math.abs(place.offsetM - source.besideM),
  }
  return preparePaths(geometry, depthRatio, noPaths())
}

/** Index into the model's stretches of where a place lies; −1 where no point tells of it. */
function stretchIndex(line: Line, model: FitModel, alongM: number): number {
  const told = line.stretches.indexOf(stretchAt(line, alongM)!)
  const k = model.settings.findIndex((setting) => setting.stretch === told)
  return k < 0 ? -1 : model.stretchOf[k]!
}

/** The ground of a fit as a stretch and a band see it; stretches without points are as the ground at large. */
function groundOf({ facts: { model }, layout }: Site, shared: Float64Array, stretch: number, b: number): StretchGround {
  const octaves = model.bandOctaves[b]!
  const own = stretch >= 0 && model.stretchCovers.length > 1 ? layout.stretch + STRETCH * stretch : -1
  const ofStretch = (i: number) => (own < 0 ? 0 : shared[own + i]!)
  const spreading =
    shared[layout.spreading]! +
    shared[layout.spreadingTilt]! * octaves +
    shared[layout.spreadingCurve]! * (octaves * octaves - 2)
  return {
    ground: {
      spreading: Math.max(LEAST_SPREADING, spreading),
      absorptionDbPerMKhz: Math.exp(shared[layout.logAbsorption]! + ofStretch(2)),
      pipeLevelDb: shared[layout.pipeLevel]! + ofStretch(3),
      pipeLossDbPerMKhz: Math.exp(shared[layout.logPipeLoss]!),
      pipeLossDbPerM: shared[layout.pipeLoss]!,
    },
    addedDb: ofStretch(0) - ofStretch(1) * (model.bandKhz[b]! - MIDDLE_KHZ),
  }
}

/** Cholesky factor of how readings stray, row-major. */
function strayFactor(octaves: readonly number[]): Float64Array {
  const n = octaves.length
  const matrix = new Float64Array(n * n)
  for (let a = 0; a < n; a++) {
    for (let b = 0; b <= a; b++) {
      matrix[a * n + b] =
        STRAY.gainDb ** 2 +
        STRAY.tiltDbPerOctave ** 2 * octaves[a]! * octaves[b]! +
        (a === b ? STRAY.bandDb ** 2 / BAND_STEP : 0)
    }
  }
  choleskyInPlace(matrix, n)
  return matrix
}

/** Solves L·x = levels in place. */
function whiten(levels: Float64Array, factor: Float64Array): void {
  const n = levels.length
  for (let i = 0; i < n; i++) {
    let sum = levels[i]!
    for (let k = 0; k < i; k++) sum -= factor[i * n + k]! * levels[k]!
    levels[i] = sum / factor[i * n + i]!
  }
}
