import { InputError } from '../base/errors'
import { bubbleDecayPerS } from './bubbleDecay'
import { fitRing, type RingFit } from './fitRing'
import { minnaertRadiusM } from './minnaert'
import { overNeighboursDb, type PeakTonality, peakTonality } from './peakTonality'
import type { Ring } from './ring'
import { soundMap } from './soundMap'
import { type SoundPeak, soundPeaks } from './soundPeaks'

/** What was heard in a clip. */
export interface FoundRings {
  /** In order of time. */
  readonly rings: readonly Ring[]
  /** Onsets of all bursts, ring or not, s, in order. */
  readonly burstTimesS: readonly number[]
  /** Bursts that hold a ring. */
  readonly ringingBurstCount: number
  /** Length of the clip, s. */
  readonly durationS: number
}

/**
 * What a burst must be to pass for a ring. Found on the tuning half of the real sounds (tests/support/realSounds),
 * raw and through a soil-like loss with noise, then judged on the other half.
 */
const LIMITS = {
  overFloorDb: 10,
  /** Over what the same pitch had before. */
  riseDb: 8,
  /** Over its neighbours in pitch at the same moment. */
  overNeighboursDb: 11.5,
  tonality: 0.5,
  broadShare: 0.3,
  liftShare: 0.4,
  explained: 0.36,
  /**
   * Quality factor against that of a free bubble of the same pitch. Walls, soil and a bubble's own creeping pitch
   * broaden a ring, and a neighbour blurs it; below is the thump of a step or a pump, above a bell or a motor.
   */
  dampingFrom: 0.17,
  dampingTo: 2,
} as const

/** Peaks closer in time than this are one burst, s. */
export const BURST_GAP_S = 0.012

/** Two rings closer than this in time and in pitch are one, heard twice. */
const SAME_TIME_S = 0.016
const SAME_PITCH_SHARE = 0.12

/**
 * Finds the rings of bubbles in a clip.
 *
 * Sudden peaks on a map of time and pitch are the bursts. A burst is a ring when its new energy is one tone rather
 * than many, and when a single decaying tone with a bubble's damping explains it. Steps, knocks, crackle and clicks fail by
 * their width, speech by its company of partials, machine tones by not decaying, thumps by decaying at once. Level and
 * sample rate do not matter.
 *
 * @param samples One channel, finite, any level.
 * @param sampleRateHz 8 000 or more.
 * @returns Nothing found in a clip shorter than about 50 ms or silent.
 * @throws {InputError} sample rate below 8 000.
 */
export function findRings(samples: Float32Array, sampleRateHz: number): FoundRings {
  if (!(sampleRateHz >= 8000)) throw new InputError(`sampleRateHz is ${sampleRateHz}; must be 8000 or more`)
  const map = soundMap(samples, sampleRateHz)
  const peaks = soundPeaks(map)
  const found: Ring[] = []
  for (const peak of peaks) {
    if (peak.overFloorDb < LIMITS.overFloorDb || peak.riseDb < LIMITS.riseDb) continue
    if (overNeighboursDb(map, peak) < LIMITS.overNeighboursDb) continue
    const tonality = peakTonality(map, peak)
    if (!isOneTone(tonality)) continue
    const fit = fitRing(map, peak.frame * map.hopS + map.halfFrameS, peak.pitchHz)
    if (fit !== null && isBubbleLike(fit)) found.push(ringOf(peak, tonality, fit))
  }
  const rings = withoutEchoes(found)
  const burstTimesS = burstTimes(peaks.map((peak) => peak.frame * map.hopS + map.halfFrameS))
  return {
    rings,
    burstTimesS,
    ringingBurstCount: burstTimes(rings.map((ring) => ring.timeS)).length,
    durationS: samples.length / sampleRateHz,
  }
}

function isOneTone({ tonality, broadShare, liftShare }: PeakTonality): boolean {
  return tonality >= LIMITS.tonality && broadShare >= LIMITS.broadShare && liftShare >= LIMITS.liftShare
}

function isBubbleLike({ pitchHz, decayS, explained }: RingFit): boolean {
  const againstFree = decayS * bubbleDecayPerS(minnaertRadiusM(pitchHz))
  return explained >= LIMITS.explained && againstFree >= LIMITS.dampingFrom && againstFree <= LIMITS.dampingTo
}

function ringOf(peak: SoundPeak, { tonality }: PeakTonality, { timeS, pitchHz, decayS }: RingFit): Ring {
  return { timeS, pitchHz, decayS, tonality, strengthDb: peak.overFloorDb }
}

/** A long ring can peak twice on the map; the stronger is kept. */
function withoutEchoes(found: readonly Ring[]): Ring[] {
  const rings: Ring[] = []
  for (const ring of [...found].sort((a, b) => a.timeS - b.timeS)) {
    let twin = -1
    for (let i = rings.length - 1; i >= 0 && ring.timeS - rings[i]!.timeS < SAME_TIME_S; i--) {
      if (Math.abs(ring.pitchHz - rings[i]!.pitchHz) < SAME_PITCH_SHARE * ring.pitchHz) twin = i
    }
    if (twin < 0) rings.push(ring)
    else if (ring.strengthDb > rings[twin]!.strengthDb) rings[twin] = ring
  }
  return rings.sort((a, b) => a.timeS - b.timeS)
}

/** Times in order, those within a gap of the last one kept left out: a plain dead time, so that random stays random. */
function burstTimes(timesS: readonly number[]): number[] {
  const bursts: number[] = []
  let last = Number.NEGATIVE_INFINITY
  for (const timeS of [...timesS].sort((a, b) => a - b)) {
    if (timeS - last <= BURST_GAP_S) continue
    bursts.push(timeS)
    last = timeS
  }
  return bursts
}
