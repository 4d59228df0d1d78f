import { DB_PER_NEPER } from '../base/units'

/** The six numbers of the ground as the fit holds them. */
export interface Ground {
  readonly spreading: number
  readonly absorptionDbPerMKhz: number
  readonly pipeLevelDb: number
  readonly pipeLossDbPerMKhz: number
  /** Loss along the pipe that is the same at all frequencies, dB/m. */
  readonly pipeLossDbPerM: number
  /** Level of the sound that entered a slab against the direct one where it entered, dB; without it slabs are passed over. */
  readonly slabLevelDb?: number
  /** Loss along a slab, dB per m and √kHz: bending waves. */
  readonly slabLossDbPerM?: number
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
  /** On a slab: distance over the ground from the point above the source to the slab, and from there to the listener, ≥ 0. */
  readonly toSlabM?: number
  readonly alongSlabM?: number
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
  /** ∂db/∂pipeLossDbPerM. */
  byPipeLoss: number
  byLogDepth: number
  /** ∂db/∂slabLevelDb, ∂db/∂ln slabLoss. */
  bySlabLevel: number
  byLogSlabLoss: number
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
  /** Of the path through a slab; −1 for `alongSlabM` off a slab. */
  alongSlabM: number
  slabSpreadDb: number
  footSpreadDb: number
  footExtraM: number
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
  out.alongSlabM = geometry.alongSlabM ?? -1
  if (out.alongSlabM >= 0) {
    const foot = Math.sqrt((geometry.toSlabM ?? 0) ** 2 + depthM ** 2)
    out.slabSpreadDb = -10 * Math.log10(1 + out.alongSlabM / depthM)
    out.footSpreadDb = -20 * Math.log10(foot / depthM)
    out.footExtraM = foot - depthM
  }
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
    alongSlabM: -1,
    slabSpreadDb: 0,
    footSpreadDb: 0,
    footExtraM: 0,
  }
}

/** An empty transfer to be filled. */
export function noTransfer(): Transfer {
  return {
    db: 0,
    bySpreading: 0,
    byLogAbsorption: 0,
    byPipeLevel: 0,
    byLogPipeLoss: 0,
    byPipeLoss: 0,
    byLogDepth: 0,
    bySlabLevel: 0,
    byLogSlabLoss: 0,
  }
}

/**
 * Level at the ground's surface against the level right above the source, by two paths whose powers add.
 *
 *     direct:  D = −20·n·log10(r/d) − a·f·(r − d),               r² = across² + d²
 *     pipe:    P = B − (p·f + s)·along − 20·n·log10(q/d) − a·f·(q − d), q² = beside² + d²
 *     level = 10·log10(10^(D/10) + 10^(P/10))
 *
 * The direct path is Bornitz's law with absorption proportional to frequency; the second is the wave that runs along
 * the water-filled pipe and leaves it everywhere, which falls off more slowly and by a constant number of decibels a
 * metre [Muggleton2023]; what joints and bends take, s, is the same at all frequencies.
 *
 * @param ground       Spreading, dimensionless; absorption and pipe loss in dB per m and kHz, steady pipe loss in dB per m, ≥ 0; pipe level in dB.
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
  const pipe =
    ground.pipeLevelDb +
    pipeLoss -
    ground.pipeLossDbPerM * paths.alongPipeM +
    ground.spreading * paths.riseSpreadDb +
    riseLoss

  // Against the stronger path, so that neither overflows.
  const lead = (direct - pipe) * NEPERS_PER_DB
  const weaker = Math.exp(-Math.abs(lead))
  const share = lead >= 0 ? 1 / (1 + weaker) : weaker / (1 + weaker)
  out.db = Math.max(direct, pipe) + Math.log1p(weaker) / NEPERS_PER_DB
  out.bySpreading = share * paths.directSpreadDb + (1 - share) * paths.riseSpreadDb
  out.byLogAbsorption = share * directLoss + (1 - share) * riseLoss
  out.byPipeLevel = 1 - share
  out.byLogPipeLoss = (1 - share) * pipeLoss
  out.byPipeLoss = -(1 - share) * paths.alongPipeM
  out.byLogDepth =
    share *
      byLogDepth(ground.spreading, lossDbPerM, paths.directSquare, paths.directExtraM + paths.depthM, paths.depthM) +
    (1 - share) *
      byLogDepth(ground.spreading, lossDbPerM, paths.riseSquare, paths.riseExtraM + paths.depthM, paths.depthM)
  out.bySlabLevel = 0
  out.byLogSlabLoss = 0
  if (paths.alongSlabM >= 0 && ground.slabLevelDb !== undefined) addSlab(ground, paths, frequencyKhz, out)
  return out
}

/**
 * Adds what came through a slab. Its change with depth is left out: it is a tenth of the other paths'.
 */
function addSlab(ground: Ground, paths: Paths, frequencyKhz: number, out: Transfer): void {
  const footLoss = -ground.absorptionDbPerMKhz * frequencyKhz * paths.footExtraM
  const slabLoss = -(ground.slabLossDbPerM ?? 0) * Math.sqrt(frequencyKhz) * paths.alongSlabM
  const slab =
    (ground.slabLevelDb ?? 0) + ground.spreading * paths.footSpreadDb + footLoss + paths.slabSpreadDb + slabLoss
  const lead = (out.db - slab) * NEPERS_PER_DB
  const weaker = Math.exp(-Math.abs(lead))
  const share = lead >= 0 ? weaker / (1 + weaker) : 1 / (1 + weaker)
  out.db = Math.max(out.db, slab) + Math.log1p(weaker) / NEPERS_PER_DB
  out.bySpreading = (1 - share) * out.bySpreading + share * paths.footSpreadDb
  out.byLogAbsorption = (1 - share) * out.byLogAbsorption + share * footLoss
  out.byPipeLevel *= 1 - share
  out.byLogPipeLoss *= 1 - share
  out.byPipeLoss *= 1 - share
  out.byLogDepth *= 1 - share
  out.bySlabLevel = share
  out.byLogSlabLoss = share * slabLoss
}

/** Nepers of power in a decibel. */
const NEPERS_PER_DB = Math.LN10 / 10

/** ∂/∂ln d of −20·n·log10(r/d) − loss·(r − d), with r² = h² + d² and square = (d/r)². */
function byLogDepth(spreading: number, lossDbPerM: number, square: number, slantM: number, depthM: number): number {
  return spreading * DB_PER_NEPER * (1 - square) - lossDbPerM * (square * slantM - depthM)
}
