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

/**
 * Level at the ground's surface against the level right above the source, by two paths whose powers add.
 *
 *     direct:  D = −20·n·log10(r/d) − a·f·(r − d),               r² = across² + depth²
 *     pipe:    P = B − p·f·along − 20·n·log10(q/d) − a·f·(q − d), q² = beside² + depth²
 *     level = 10·log10(10^(D/10) + 10^(P/10))
 *
 * The direct path is Bornitz's law with absorption proportional to frequency; the second is the wave that runs along
 * the water-filled pipe and leaves it everywhere, which falls off more slowly and by a constant number of decibels a
 * metre [Muggleton2023].
 *
 * @param ground    Spreading, dimensionless; absorption and pipe loss in dB per m and kHz, ≥ 0; pipe level in dB.
 * @param geometry  Metres, depth > 0.
 * @param frequencyKhz Mid-band frequency, kHz.
 * @param out       Filled and returned, so that a loop need not allocate.
 * @see Bornitz 1931 in the form of Richart, Hall & Woods 1970. [RichartHallWoods1970] in sources.ts
 */
export function transfer(ground: Ground, geometry: Geometry, frequencyKhz: number, out: Transfer): Transfer {
  const { depthM, acrossM, alongPipeM, besidePipeM } = geometry
  const { spreading, absorptionDbPerMKhz, pipeLossDbPerMKhz } = ground
  const lossDbPerM = absorptionDbPerMKhz * frequencyKhz
  const slant = Math.sqrt(acrossM * acrossM + depthM * depthM)
  const rise = Math.sqrt(besidePipeM * besidePipeM + depthM * depthM)

  const directSpread = -20 * Math.log10(slant / depthM)
  const directLoss = -lossDbPerM * (slant - depthM)
  const pipeSpread = -20 * Math.log10(rise / depthM)
  const riseLoss = -lossDbPerM * (rise - depthM)
  const pipeLoss = -pipeLossDbPerMKhz * frequencyKhz * alongPipeM
  const direct = spreading * directSpread + directLoss
  const pipe = ground.pipeLevelDb + pipeLoss + spreading * pipeSpread + riseLoss

  const top = Math.max(direct, pipe)
  const directPower = 10 ** ((direct - top) / 10)
  const pipePower = 10 ** ((pipe - top) / 10)
  const share = directPower / (directPower + pipePower)
  out.db = top + 10 * Math.log10(directPower + pipePower)
  out.bySpreading = share * directSpread + (1 - share) * pipeSpread
  out.byLogAbsorption = share * directLoss + (1 - share) * riseLoss
  out.byPipeLevel = 1 - share
  out.byLogPipeLoss = (1 - share) * pipeLoss
  out.byLogDepth =
    share * byLogDepth(spreading, lossDbPerM, slant, depthM) +
    (1 - share) * byLogDepth(spreading, lossDbPerM, rise, depthM)
  return out
}

/** ∂/∂ln d of −20·n·log10(r/d) − loss·(r − d), with r² = h² + d². */
function byLogDepth(spreading: number, lossDbPerM: number, slantM: number, depthM: number): number {
  const square = (depthM / slantM) ** 2
  return spreading * DB_PER_NEPER * (1 - square) - lossDbPerM * ((depthM * depthM) / slantM - depthM)
}
