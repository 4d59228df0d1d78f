import type { Random } from '../base/random'
import { normalQuantile } from '../base/statistics'
import { bubbleDecayPerS } from '../bubbles/bubbleDecay'
import { minnaertPitchHz, minnaertRadiusM } from '../bubbles/minnaert'
import { GRID_COUNT, type GridBand } from './grid'
import { bubbleEnergyAt, energyToPsd, pitchStep } from './ringEnergy'

/** How a place bubbles. */
export interface BubbleTrain {
  readonly ratePerS: number
  /** `broken`: random arrivals (Poisson); `orifice`: a near-regular train below the critical gas flow. */
  readonly arrival: 'broken' | 'orifice'
  /** Sizes are log-normal round this, m. */
  readonly medianRadiusM: number
  /** Standard deviation of ln(radius). */
  readonly radiusSpread: number
  /** Each bubble's own excitation, standard deviation, dB: unknown in general [Berges2015]; 4 chosen. */
  readonly excitationSdDb: number
  /** Amplitude at 1 m of a bubble of 3 mm, full scale 1. */
  readonly amplitude: number
}

/** Rings one by one: same index, same ring. In order of time. */
export interface Rings {
  readonly timeS: Float64Array
  readonly pitchHz: Float64Array
  readonly amplitude: Float64Array
  readonly decayPerS: Float64Array
  /** Pitch rises as f·(1 + rise·t), 1/s. */
  readonly risePerS: Float64Array
}

/** Times from–to, s, in which something sounds. */
export type Gate = readonly { readonly fromS: number; readonly toS: number }[]

const SMALLEST_RADIUS_M = 0.0015
const LARGEST_RADIUS_M = 0.008

/** A wall lowers the pitch by up to 20 %, a soft face raises it by up to 10 %. [Strasberg1953] */
const WALL_LOW = 0.8
const WALL_HIGH = 1.1

/** Coefficient of variation of the time between bubbles of a single orifice. Chosen. */
const ORIFICE_VARIATION = 0.15

/**
 * The bubbles of one clip.
 *
 * Size log-normal within 1.5 to 8 mm; pitch by Minnaert, shifted by walls; decay by van den Doel; amplitude as
 * radius^1.5 times an excitation of its own; a slight rise in pitch (his ξ up to 0.03).
 *
 * @param gate When it bubbles; `null`: all the time.
 * @see van den Doel 2005. [vandenDoel2005]
 */
export function drawBubbles(train: BubbleTrain, durationS: number, random: Random, gate: Gate | null): Rings {
  const timeS = arrivals(train, durationS, random).filter(
    (t) => gate === null || gate.some((g) => t >= g.fromS && t < g.toS),
  )
  const count = timeS.length
  const rings = {
    timeS: Float64Array.from(timeS),
    pitchHz: new Float64Array(count),
    amplitude: new Float64Array(count),
    decayPerS: new Float64Array(count),
    risePerS: new Float64Array(count),
  }
  for (let i = 0; i < count; i++) {
    const radiusM = heldRadiusM(train.medianRadiusM * Math.exp(random.normal(0, train.radiusSpread)))
    const pitchHz = minnaertPitchHz(radiusM) * random.uniform(WALL_LOW, WALL_HIGH)
    const decayPerS = bubbleDecayPerS(minnaertRadiusM(pitchHz))
    rings.pitchHz[i] = pitchHz
    rings.amplitude[i] = bubbleAmplitude(train, radiusM) * 10 ** (random.normal(0, train.excitationSdDb) / 20)
    rings.decayPerS[i] = decayPerS
    rings.risePerS[i] = random.uniform(0, 0.03) * decayPerS
  }
  return rings
}

function arrivals(train: BubbleTrain, durationS: number, random: Random): number[] {
  const times: number[] = []
  const mean = 1 / train.ratePerS
  let t = random.uniform(0, mean)
  while (t < durationS) {
    times.push(t)
    t +=
      train.arrival === 'broken'
        ? random.exponential(train.ratePerS)
        : mean * Math.max(0.2, random.normal(1, ORIFICE_VARIATION))
  }
  return times
}

function heldRadiusM(radiusM: number): number {
  return Math.min(Math.max(radiusM, SMALLEST_RADIUS_M), LARGEST_RADIUS_M)
}

function bubbleAmplitude(train: BubbleTrain, radiusM: number): number {
  return train.amplitude * (radiusM / 0.003) ** 1.5
}

/**
 * Mean power per hertz at 1 m of a train while it bubbles, on the grid: the energy of a ring averaged over sizes,
 * walls and excitations, times the rate.
 */
export function trainPsd(train: BubbleTrain): Float64Array {
  const meanSquare = excitationMoment(train, 2)
  const sum = new Float64Array(GRID_COUNT)
  eachBubble(train, (amplitude, energy, weight) => {
    const factor = weight * amplitude * amplitude * meanSquare
    for (let g = 0; g < GRID_COUNT; g++) sum[g]! += factor * energy[g]!
  })
  return energyToPsd(sum, train.ratePerS)
}

/**
 * Relative covariance of a train's powers in bands over some time: bubbles are countable and unequal, and one bubble is
 * heard in many bands at once.
 *
 *     (E[e·f]/(E[e]·E[f]) − 1 + v²) / (rate·time),   e, f: a bubble's energies in two bands
 *
 * with v the coefficient of variation of the time between bubbles: 1 for random arrivals (compound Poisson), less for a
 * regular train (variance of a renewal-reward sum over a long time; Cox 1962, from memory).
 *
 * @returns Row-major, bands × bands.
 */
export function trainCovariance(train: BubbleTrain, bands: readonly GridBand[], durationS: number): Float64Array {
  const n = bands.length
  const first = new Float64Array(n)
  const second = new Float64Array(n * n)
  const energies = new Float64Array(n)
  eachBubble(
    train,
    (amplitude, energy, weight) => {
      for (const [b, { firstCell: g }] of bands.entries())
        energies[b] = amplitude * amplitude * (energy[g]! + energy[g + 1]! + energy[g + 2]!)
      for (let b = 0; b < n; b++) {
        first[b]! += weight * energies[b]!
        for (let c = 0; c < n; c++) second[b * n + c]! += weight * energies[b]! * energies[c]!
      }
    },
    FINE_SIZES,
  )
  const excitation = excitationMoment(train, 4) / excitationMoment(train, 2) ** 2
  const regular = 1 - (train.arrival === 'orifice' ? ORIFICE_VARIATION ** 2 : 1)
  return second.map(
    (product, i) =>
      ((excitation * product) / (first[Math.floor(i / n)]! * first[i % n]!) - regular) / (train.ratePerS * durationS),
  )
}

/** Mean of a power of the excitation factor, log-normal about 1. */
function excitationMoment(train: BubbleTrain, order: number): number {
  const sigma = (train.excitationSdDb * Math.LN10) / 20
  return Math.exp((order * order * sigma * sigma) / 2)
}

const SIZES = 24
const WALLS = 6
/** Squares of energies hang on the rare large bubbles. */
const FINE_SIZES = 240

/** Visits sizes and walls evenly by probability. */
function eachBubble(
  train: BubbleTrain,
  visit: (amplitude: number, unitEnergy: Float64Array, weight: number) => void,
  sizes = SIZES,
): void {
  for (let s = 0; s < sizes; s++) {
    const quantile = normalQuantile((s + 0.5) / sizes)
    const radiusM = heldRadiusM(train.medianRadiusM * Math.exp(train.radiusSpread * quantile))
    for (let w = 0; w < WALLS; w++) {
      const pitchHz = minnaertPitchHz(radiusM) * (WALL_LOW + ((WALL_HIGH - WALL_LOW) * (w + 0.5)) / WALLS)
      visit(bubbleAmplitude(train, radiusM), bubbleEnergyAt(pitchStep(pitchHz)), 1 / (sizes * WALLS))
    }
  }
}

/** Slugs: a few seconds of bubbling, then silence. */
export interface Slugs {
  readonly shortestOnS: number
  readonly longestOnS: number
  /** Silences of 2 to 8 s. */
  readonly shortestOffS: number
  readonly longestOffS: number
}

/** When slugs let it bubble in one clip; the clip starts anywhere in the rhythm. May be empty. */
export function slugGate(slugs: Slugs, durationS: number, random: Random): Gate {
  const gate: { fromS: number; toS: number }[] = []
  const onS = () => random.uniform(slugs.shortestOnS, slugs.longestOnS)
  const offS = () => random.uniform(slugs.shortestOffS, slugs.longestOffS)
  let t = -random.uniform(0, slugs.longestOnS + slugs.longestOffS) - slugs.longestOffS
  while (t < durationS) {
    const toS = t + onS()
    if (toS > 0) gate.push({ fromS: Math.max(0, t), toS: Math.min(toS, durationS) })
    t = toS + offS()
  }
  return gate
}

/** Share of the time a slugging place bubbles in the long run. */
export function slugDuty(slugs: Slugs): number {
  const on = slugs.shortestOnS + slugs.longestOnS
  return on / (on + slugs.shortestOffS + slugs.longestOffS)
}
