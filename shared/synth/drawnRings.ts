import type { Random } from '../base/random'
import { median, robustSpread } from '../base/statistics'
import { ATMOSPHERE_PA } from '../base/units'
import { minnaertRadiusM } from '../bubbles/minnaert'
import type { Ring, RingSummary } from '../bubbles/ring'
import type { HeardRings, Parts } from './clipSounds'
import type { FramePowers } from './framePowers'
import { EVIDENCE_BANDS, nearestCell } from './grid'

/** A ring is found with even odds at this strength over the floor of its band, dB; the odds turn over 1.5 dB. Measured
 *  on rendered clips. */
const EVEN_ODDS_DB = 11
const ODDS_WIDTH_DB = 1.5
/** Rings closer than this are heard as one, s. */
const APART_S = 0.03

/** Rings a ring finder would report, and what they say together. */
export function drawnRings(
  parts: Parts,
  powers: FramePowers,
  durationS: number,
  random: Random,
): { rings: RingSummary; ringList: Ring[]; bubbling: number } {
  const floor = bandFloors(powers)
  const heard = parts.rings.filter((part) => part.areBubbles).flatMap((part) => found(part, floor, random))
  heard.push(...falseRings(durationS, random))
  const ringList = apart(heard.sort((a, b) => a.timeS - b.timeS))
  const rings = summary(ringList, durationS)
  return { rings, ringList, bubbling: 1 - Math.exp(-rings.ratePerS / 4) }
}

function bandFloors({ frames, noise, tonal }: FramePowers): Float64Array {
  return Float64Array.from(EVIDENCE_BANDS, (_, b) => {
    let sum = 0
    for (let i = b * frames; i < (b + 1) * frames; i++) sum += noise[i]! + 0.3 * tonal[i]!
    return sum / frames
  })
}

function found({ rings, gain }: HeardRings, floor: Float64Array, random: Random): Ring[] {
  const list: Ring[] = []
  for (let i = 0; i < rings.timeS.length; i++) {
    const pitchHz = rings.pitchHz[i]!
    const cell = nearestCell(pitchHz)
    const band = Math.floor((cell - EVIDENCE_BANDS[0]!.firstCell) / 3)
    if (band < 0 || band >= floor.length) continue
    const strengthDb = 10 * Math.log10((rings.amplitude[i]! ** 2 / 2) * (gain[cell]! / floor[band]!))
    const odds = 1 / (1 + Math.exp((EVEN_ODDS_DB - strengthDb) / ODDS_WIDTH_DB))
    if (!random.chance(odds)) continue
    const tonality = Math.min(0.95, Math.max(0.3, 0.5 + strengthDb / 60 + random.normal(0, 0.08)))
    list.push({ timeS: rings.timeS[i]!, pitchHz, decayS: 1 / rings.decayPerS[i]!, tonality, strengthDb })
  }
  return list
}

/** Even noise passes for a ring now and then: one in some three seconds. */
function falseRings(durationS: number, random: Random): Ring[] {
  const list: Ring[] = []
  for (let timeS = random.exponential(0.3); timeS < durationS; timeS += random.exponential(0.3))
    list.push({
      timeS,
      pitchHz: random.logUniform(300, 2000),
      decayS: random.uniform(0.004, 0.02),
      tonality: random.uniform(0.35, 0.6),
      strengthDb: random.uniform(9, 12),
    })
  return list
}

function apart(sorted: Ring[]): Ring[] {
  const kept: Ring[] = []
  for (const ring of sorted) {
    const last = kept[kept.length - 1]
    if (last === undefined || ring.timeS - last.timeS >= APART_S) kept.push(ring)
    else if (ring.strengthDb > last.strengthDb) kept[kept.length - 1] = ring
  }
  return kept
}

function summary(list: readonly Ring[], durationS: number): RingSummary {
  const any = list.length > 0
  const pitches = list.map((ring) => ring.pitchHz)
  const medianPitchHz = any ? median(pitches) : null
  return {
    ratePerS: list.length / durationS,
    medianPitchHz,
    pitchSpreadOctaves: any ? robustSpread(pitches.map(Math.log2)) : null,
    medianDecayS: any ? median(list.map((ring) => ring.decayS)) : null,
    tonality: any ? median(list.map((ring) => ring.tonality)) : null,
    medianStrengthDb: any ? median(list.map((ring) => ring.strengthDb)) : null,
    medianRadiusM: medianPitchHz === null ? null : minnaertRadiusM(medianPitchHz),
    assumedPressurePa: ATMOSPHERE_PA,
    burstRatePerS: list.length / durationS,
    ringShare: any ? 1 : null,
    regularity: regularity(list),
    slugRateHz: null,
  }
}

/** 1 less the coefficient of variation of the gaps, held to 0 to 1. */
function regularity(list: readonly Ring[]): number | null {
  if (list.length < 5) return null
  const gaps = list.slice(1).map((ring, i) => ring.timeS - list[i]!.timeS)
  const mean = gaps.reduce((a, b) => a + b) / gaps.length
  const variance = gaps.reduce((sum, gap) => sum + (gap - mean) ** 2, 0) / gaps.length
  return Math.min(1, Math.max(0, 1 - Math.sqrt(variance) / mean))
}
