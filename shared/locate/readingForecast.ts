import { choleskyInPlace } from '../base/cholesky'
import { type Geometry, type Ground, noPaths, noTransfer, preparePaths, transfer } from '../ground/transfer'
import { depthAt } from '../line/depthAt'
import type { Line } from '../line/line'
import { type LinePath, linePath } from '../line/linePath'
import { placeAlong } from '../line/placeAlong'
import { stretchAt } from '../line/stretchAt'
import type { Facts } from './facts'
import { type FitModel, STRETCH, shapeLayout } from './fitModel'
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
 * itself, dB. Chosen a little wider than in the fit, because the forecast holds the ground for known.
 */
const STRAY = { gainDb: 3, tiltDbPerOctave: 1.2, bandDb: 3 }
/** Air is let in, and machines stand, at or near the surface, m. Chosen. */
const SURFACE_DEPTH_M = 0.15
/** Frequency at which a stretch's loss a kHz changes nothing, kHz. */
const MIDDLE_KHZ = 0.5
const LEAST_SPREADING = 0.1

/**
 * Forecasts what a new setting-down would read for each leak that may be, in numbers that each stray by 1, all
 * independent: the distance between two forecasts is how well such a reading tells the two leaks apart.
 *
 * Each leak brings the spectrum and the ground that fitted best with it, so the forecasts differ only as far as the
 * sweep leaves them free to.
 *
 * @returns One row a leak, as many numbers as bands.
 */
export function readingForecast(facts: Facts, supposed: readonly Supposed[]): (place: Place) => Float64Array[] {
  const path = linePath(facts.line)
  const { bandKhz, bandOctaves } = facts.model
  const factor = strayFactor(bandOctaves)
  const best = facts.scan.tried.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a))
  const floorDb = best.fit.shared.subarray(best.fit.shared.length - bandKhz.length)
  return (place) =>
    supposed.map((leak) => {
      const levels = levelsAt({ facts, path, place, leak, floorDb })
      whiten(levels, factor)
      return levels
    })
}

/** Levels of leak, known sources and floor together, dBFS a band. */
function levelsAt(at: {
  readonly facts: Facts
  readonly path: LinePath
  readonly place: Place
  readonly leak: Supposed
  readonly floorDb: Float64Array
}): Float64Array {
  const { facts, path, place, leak, floorDb } = at
  const { model, line, known } = facts
  const { shared } = leak.tried.fit
  const { count } = shapeLayout(model)
  const bands = model.bandKhz.length
  const depthRatio = Math.exp(shared[4]!)
  const knownPlaces = [...(line.airInletM === null ? [] : [line.airInletM]), ...line.noises.map(({ atM }) => atM)]
  const sources = [
    { from: count, alongM: leak.tried.alongM, besideM: leak.besideM, mostDepthM: Number.POSITIVE_INFINITY },
    ...knownPlaces.map((alongM, i) => ({
      from: shared.length - bands * (1 + known.length - i),
      alongM,
      besideM: 0,
      mostDepthM: SURFACE_DEPTH_M,
    })),
  ].map((source) => ({
    from: source.from,
    paths: preparePaths(geometry(line, path, source, place), depthRatio, noPaths()),
  }))
  // A pipe that lies beside the route must be the louder to have read the same on it.
  const straight = { alongM: leak.tried.alongM, besideM: 0, mostDepthM: Number.POSITIVE_INFINITY }
  const over = { alongM: leak.tried.alongM, offsetM: 0 }
  const onRoute = preparePaths(geometry(line, path, straight, over), depthRatio, noPaths())
  const beside = preparePaths(geometry(line, path, { ...straight, besideM: leak.besideM }, over), depthRatio, noPaths())
  const moved = noTransfer()
  const stretch = stretchIndex(line, model, place.alongM)
  return Float64Array.from(floorDb, (floor, b) => {
    const { ground, stretchDb } = groundOf(model, shared, stretch, b)
    const kHz = model.bandKhz[b]!
    const louderDb =
      leak.besideM === 0 ? 0 : transfer(ground, onRoute, kHz, moved).db - transfer(ground, beside, kHz, moved).db
    let power = 10 ** (floor / 10)
    for (const [j, { from, paths }] of sources.entries()) {
      const db = shared[from + b]! + transfer(ground, paths, kHz, moved).db + stretchDb + (j === 0 ? louderDb : 0)
      power += 10 ** (db / 10)
    }
    return 10 * Math.log10(power)
  })
}

function geometry(
  line: Line,
  path: LinePath,
  source: { readonly alongM: number; readonly besideM: number; readonly mostDepthM: number },
  place: Place,
): Geometry {
  const from = placeAlong(path, source.alongM, source.besideM)
  const to = placeAlong(path, place.alongM, place.offsetM)
  return {
    depthM: Math.min(source.mostDepthM, depthAt(line, source.alongM).depthM),
    acrossM: Math.hypot(from.xM - to.xM, from.yM - to.yM),
    alongPipeM: Math.abs(source.alongM - place.alongM),
    besidePipeM: Math.abs(place.offsetM - source.besideM),
  }
}

/** Index into the model's stretches of where a place lies; −1 where no point tells of it. */
function stretchIndex(line: Line, model: FitModel, alongM: number): number {
  const told = line.stretches.indexOf(stretchAt(line, alongM)!)
  const k = model.settings.findIndex((setting) => setting.stretch === told)
  return k < 0 ? -1 : model.stretchOf[k]!
}

/** The ground of a fit as a stretch and a band see it, and what the stretch adds, dB. */
function groundOf(
  model: FitModel,
  shared: Float64Array,
  stretch: number,
  b: number,
): { ground: Ground; stretchDb: number } {
  const layout = shapeLayout(model)
  const octaves = model.bandOctaves[b]!
  const own = stretch >= 0 && model.stretchCovers.length > 1 ? layout.stretch + STRETCH * stretch : -1
  const ofStretch = (i: number) => (own < 0 ? 0 : shared[own + i]!)
  return {
    ground: {
      spreading: Math.max(
        LEAST_SPREADING,
        shared[layout.spreading]! +
          shared[layout.spreadingTilt]! * octaves +
          shared[layout.spreadingCurve]! * (octaves * octaves - 2),
      ),
      absorptionDbPerMKhz: Math.exp(shared[layout.logAbsorption]! + ofStretch(2)),
      pipeLevelDb: shared[layout.pipeLevel]! + ofStretch(3),
      pipeLossDbPerMKhz: Math.exp(shared[layout.logPipeLoss]!),
    },
    stretchDb: ofStretch(0) - ofStretch(1) * (model.bandKhz[b]! - MIDDLE_KHZ),
  }
}

/** Cholesky factor of how readings stray, row-major. */
function strayFactor(octaves: Float64Array): Float64Array {
  const n = octaves.length
  const matrix = new Float64Array(n * n)
  for (let a = 0; a < n; a++) {
    for (let b = 0; b <= a; b++) {
      matrix[a * n + b] =
        STRAY.gainDb ** 2 + STRAY.tiltDbPerOctave ** 2 * octaves[a]! * octaves[b]! + (a === b ? STRAY.bandDb ** 2 : 0)
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
