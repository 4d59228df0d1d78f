import { DB_PER_NEPER } from '../base/units'

/** The six numbers of the ground as the fit holds them. */
export interface Ground {
  readonly spreading: number
  readonly absorptionDbPerMKhz: number
  readonly pipeLevelDb: number
  readonly pipeLossDbPerMKhz: number
}

/** Where source and listener are against each other, m. */
export interface Geometry {
  /** Depth of the source, > 0. */
  readonly depthM: number
  /** Distance over the ground from the point above the source to the listener, ≥ 0. */
  readonly acrossM: number
  /** Distance along the pipe from the source to the pipe's nearest place to the listener, ≥ 0. */
  readonly alongPipeM: number
  /** Distance over the ground from the pipe's nearest place to the listener, ≥ 0. */
  readonly besidePipeM: number
}

/** Change of level from right above the source to the listener, with what the fit needs to move. */
export interface Transfer {
  /** dB; 0 right above a source that has no pipe path. */
  db: number
  /** ∂db/∂spreading, ∂db/∂ln absorption, ∂db/∂pipeLevelDb, ∂db/∂ln pipeLoss, ∂db/∂ln depth. */
  bySpreading: number
  byLogAbsorption: number
  byPipeLevel: number
  byLogPipeLoss: number
  byLogDepth: number
}

/** What of a geometry all bands share, so that a loop over bands need not work it out again. */
export interface Paths {
  depthM: number
  alongPipeM: number
  /** Of the direct and of the pipe's path to the surface: −20·log10(r/d), r − d in m, (d/r)². */
  directSpreadDb: number
  directExtraM: number
  directSquare: number
  riseSpreadDb: number
  riseExtraM: number
  riseSquare: number
}

/** Paths of a geometry whose depth is multiplied by `depthRatio`; fills and returns `out`. */
export function preparePaths(geometry: Geometry, depthRatio: number, out: Paths): Paths {
  const depthM = geometry.depthM * depthRatio
  const slant = Math.sqrt(geometry.acrossM ** 2 + depthM ** 2)
  const rise = Math.sqrt(geometry.besidePipeM ** 2 + depthM ** 2)
  out.depthM = depthM
  out.alongPipeM = geometry.alongPipeM
  out.directSpreadDb = -20 * Math.log10(slant / depthM)
  out.directExtraM = slant - depthM
  out.directSquare = (depthM / slant) ** 2
  out.riseSpreadDb = -20 * Math.log10(rise / depthM)
  out.riseExtraM = rise - depthM
  out.riseSquare = (depthM / rise) ** 2
  return out
}

/** Empty paths to be filled. */
export function noPaths(): Paths {
  return {
    depthM: 1,
    alongPipeM: 0,
    directSpreadDb: 0,
    directExtraM: 0,
    directSquare: 1,
    riseSpreadDb: 0,
    riseExtraM: 0,
    riseSquare: 1,
  }
}

/** An empty transfer to be filled. */
export function noTransfer(): Transfer {
  return { db: 0, bySpreading: 0, byLogAbsorption: 0, byPipeLevel: 0, byLogPipeLoss: 0, byLogDepth: 0 }
}

/**
 * Level at the ground's surface against the level right above the source, by two paths whose powers add.
 *
 *     direct:  D = −20·n·log10(r/d) − a·f·(r − d),               r² = across² + d²
 *     pipe:    P = B − p·f·along − 20·n·log10(q/d) − a·f·(q − d), q² = beside² + d²
 *     level = 10·log10(10^(D/10) + 10^(P/10))
 *
 * The direct path is Bornitz's law with absorption proportional to frequency; the second is the wave that runs along
 * the water-filled pipe and leaves it everywhere, which falls off more slowly and by a constant number of decibels a
 * metre [Muggleton2023].
 *
 * @param ground       Spreading, dimensionless; absorption and pipe loss in dB per m and kHz, ≥ 0; pipe level in dB.
 * @param paths        From `preparePaths`.
 * @param frequencyKhz Mid-band frequency, kHz.
 * @param out          Filled and returned, so that a loop need not allocate.
 * @see Bornitz 1931 in the form of Richart, Hall & Woods 1970. [Bornitz1931], [RichartHallWoods1970] in sources.ts
 */
export function transfer(ground: Ground, paths: Paths, frequencyKhz: number, out: Transfer): Transfer {
  const lossDbPerM = ground.absorptionDbPerMKhz * frequencyKhz
  const directLoss = -lossDbPerM * paths.directExtraM
  const riseLoss = -lossDbPerM * paths.riseExtraM
  const pipeLoss = -ground.pipeLossDbPerMKhz * frequencyKhz * paths.alongPipeM
  const direct = ground.spreading * paths.directSpreadDb + directLoss
  const pipe = ground.pipeLevelDb + pipeLoss + ground.spreading * paths.riseSpreadDb + riseLoss

  // Against the stronger path, so that neither overflows.
  const lead = (direct - pipe) * NEPERS_PER_DB
  const weaker = Math.exp(-Math.abs(lead))
  const share = lead >= 0 ? 1 / (1 + weaker) : weaker / (1 + weaker)
  out.db = Math.max(direct, pipe) + Math.log1p(weaker) / NEPERS_PER_DB
  out.bySpreading = share * paths.directSpreadDb + (1 - share) * paths.riseSpreadDb
  out.byLogAbsorption = share * directLoss + (1 - share) * riseLoss
  out.byPipeLevel = 1 - share
  out.byLogPipeLoss = (1 - share) * pipeLoss
  out.byLogDepth =
    share *
      byLogDepth(ground.spreading, lossDbPerM, paths.directSquare, paths.directExtraM + paths.depthM, paths.depthM) +
    (1 - share) *
      byLogDepth(ground.spreading, lossDbPerM, paths.riseSquare, paths.riseExtraM + paths.depthM, paths.depthM)
  return out
}

/** Nepers of power in a decibel. */
const NEPERS_PER_DB = Math.LN10 / 10

/** ∂/∂ln d of −20·n·log10(r/d) − loss·(r − d), with r² = h² + d² and square = (d/r)². */
function byLogDepth(spreading: number, lossDbPerM: number, square: number, slantM: number, depthM: number): number {
  return spreading * DB_PER_NEPER * (1 - square) - lossDbPerM * (square * slantM - depthM)
}
