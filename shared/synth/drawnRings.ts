import type { Random } from '../base/random'
import { mean } from '../base/statistics'
import { bubblingFrom } from '../bubbles/bubblingFrom'
import { BURST_GAP_S } from '../bubbles/findRings'
import type { Ring, RingSummary } from '../bubbles/ring'
import { summariseRings } from '../bubbles/summariseRings'
import type { HeardRings, Parts } from './clipSounds'
import { bandOfCell, type FramePowers } from './framePowers'
import { nearestCell } from './grid'

/**
 * Odds that a bubble is found, as fitted to the ring finder on 15 000 bubbles of rendered clips: it must stand out from
 * the noise of its band, and from the bubbling of its band the more the higher its pitch, and less is found soon
 * after the bubble before.
 */
const FOUND = {
  most: 0.97,
  overNoiseDb: 14.1,
  overNoiseWidthDb: 2.4,
  overAllDb: 3.1,
  overAllDbPerOctave: 4.2,
  overAllPitchHz: 700,
  overAllWidthDb: 4.5,
  crowded: 0.6,
  crowdedS: 0.02,
} as const
/** A bubble is a burst, ring or not, with even odds at this strength over noise, dB. Measured likewise. */
const BURST_DB = 11
/** Rings found where there are none, and bursts where there is no bubbling, a second. Measured likewise. */
const FALSE_PER_S = 0.03
const OTHER_BURSTS_PER_S = 3.1

/** Rings the ring finder would report, and what they say together. */
export function drawnRings(
  parts: Parts,
  powers: FramePowers,
  durationS: number,
  random: Random,
): { rings: RingSummary; ringList: readonly Ring[]; bubbling: number } {
  const floors = powers.noise.map((noise, b) => {
    const noisePower = noise.length === 0 ? 0 : mean(noise)
    return { noisePower, allPower: noisePower + (noise.length === 0 ? 0 : mean(powers.tonal[b]!)) }
  })
  const ringList = moments(FALSE_PER_S, durationS, random).map((timeS) => falseRing(timeS, random))
  const times = moments(OTHER_BURSTS_PER_S, durationS, random)
  for (const part of parts.rings) if (part.areBubbles) listen(part, floors, random, { ringList, times })
  ringList.sort((a, b) => a.timeS - b.timeS)
  const burstTimesS = apart([...times, ...ringList.map((ring) => ring.timeS)].sort((a, b) => a - b))
  const ringingBurstCount = apart(ringList.map((ring) => ring.timeS)).length
  const rings = summariseRings({ rings: ringList, burstTimesS, ringingBurstCount, durationS })
  return { rings, ringList, bubbling: bubblingFrom(rings) }
}

interface BandFloor {
  readonly noisePower: number
  /** Noise and bubbling. */
  readonly allPower: number
}

/** Adds the rings and bursts that are found among the bubbles of one place. */
function listen(
  { rings, gain }: HeardRings,
  floors: readonly BandFloor[],
  random: Random,
  found: { readonly ringList: Ring[]; readonly times: number[] },
): void {
  for (let i = 0; i < rings.timeS.length; i++) {
    const pitchHz = rings.pitchHz[i]!
    const timeS = rings.timeS[i]!
    const cell = nearestCell(pitchHz)
    const band = bandOfCell(cell)
    if (band === null) continue
    const { noisePower, allPower } = floors[band]!
    const power = (rings.amplitude[i]! ** 2 / 2) * gain[cell]!
    const overNoiseDb = 10 * Math.log10(power / noisePower)
    if (overNoiseDb < 3) continue
    if (random.chance(logistic((overNoiseDb - BURST_DB) / 2))) found.times.push(timeS)
    const overAllDb = 10 * Math.log10(power / allPower)
    const gapS = i === 0 ? 1 : timeS - rings.timeS[i - 1]!
    if (random.chance(ringOdds({ overNoiseDb, overAllDb, pitchHz, gapS })))
      found.ringList.push(heardRing({ timeS, pitchHz, decayPerS: rings.decayPerS[i]!, overNoiseDb }, random))
  }
}

function ringOdds(ring: { overNoiseDb: number; overAllDb: number; pitchHz: number; gapS: number }): number {
  const wantedDb = FOUND.overAllDb + FOUND.overAllDbPerOctave * Math.log2(ring.pitchHz / FOUND.overAllPitchHz)
  return (
    FOUND.most *
    logistic((ring.overNoiseDb - FOUND.overNoiseDb) / FOUND.overNoiseWidthDb) *
    logistic((ring.overAllDb - wantedDb) / FOUND.overAllWidthDb) *
    (1 - FOUND.crowded * Math.exp(-ring.gapS / FOUND.crowdedS))
  )
}

/** A ring as the finder measures it: strength, tonality and decay as found on rendered clips, on the whole. */
function heardRing(
  ring: { timeS: number; pitchHz: number; decayPerS: number; overNoiseDb: number },
  random: Random,
): Ring {
  const { timeS, pitchHz, decayPerS, overNoiseDb } = ring
  return {
    timeS,
    pitchHz,
    decayS: (0.7 / decayPerS) * Math.exp(random.normal(0, 0.25)),
    tonality: Math.min(0.99, 0.87 + overNoiseDb / 250 + random.normal(0, 0.03)),
    strengthDb: Math.max(10, 0.8 * overNoiseDb + 0.5 + random.normal(0, 1.5)),
  }
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x))
}

/** Moments of a Poisson stream in a clip, s. */
function moments(ratePerS: number, durationS: number, random: Random): number[] {
  const times: number[] = []
  for (let t = random.exponential(ratePerS); t < durationS; t += random.exponential(ratePerS)) times.push(t)
  return times
}

/** Even noise passes for a ring now and then. */
function falseRing(timeS: number, random: Random): Ring {
  return {
    timeS,
    pitchHz: random.logUniform(300, 2000),
    decayS: random.uniform(0.004, 0.02),
    tonality: random.uniform(0.5, 0.65),
    strengthDb: random.uniform(10, 13),
  }
}

function apart(sortedS: readonly number[]): number[] {
  const kept: number[] = []
  for (const timeS of sortedS) if (kept.length === 0 || timeS - kept[kept.length - 1]! > BURST_GAP_S) kept.push(timeS)
  return kept
}
