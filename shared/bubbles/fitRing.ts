import type { SoundMap } from './soundMap'

/** A decaying tone fitted to the samples. */
export interface RingFit {
  /** Onset from the clip's start, s. */
  readonly timeS: number
  /** Mean pitch of the decay, Hz. */
  readonly pitchHz: number
  /** Time for the amplitude to fall to 1/e, s. */
  readonly decayS: number
  /** π·pitch·decay. */
  readonly quality: number
  /**
   * Share of the energy about the pitch, from one decay time before the onset to two after it, that the decaying tone
   * explains, 0 to 1: low for noise, for a tone that was there before, and for two tones at once.
   */
  readonly explained: number
}

/** Quality factors tried, from well below to well above a bubble's; between them the best is found by a parabola. */
const QUALITY_STEP = 1.7
const QUALITIES = Float64Array.from({ length: 8 }, (_, i) => 4 * QUALITY_STEP ** i)

/** Samples of the envelope in a cycle of the tone. */
const SAMPLES_A_CYCLE = 3

/** The onset lies between these, s from the peak's frame's middle. Chosen: half a frame, and a little. */
const EARLIEST_S = -0.016
const LATEST_S = 0.006

/**
 * Fits one decaying tone near a pitch and a time: the likeliest one in white noise.
 *
 * The clip is brought down to the pitch (times exp(−iωt), averaged over two cycles), then for each decay a filter that
 * runs backwards in time and forgets at that decay gives the energy a tone would explain, for every onset at once;
 * the largest wins. The average has zeros where a hum or a constant would come to lie.
 *
 * @param timeS Middle of the frame in which the pitch peaked, s.
 * @returns `null` where the clip is too short around that time.
 */
export function fitRing(map: SoundMap, timeS: number, roughPitchHz: number): RingFit | null {
  const base = basebandAround(map, timeS, roughPitchHz)
  if (base === null) return null
  const first = Math.max(1, Math.round((timeS + EARLIEST_S - base.startS) / base.stepS))
  const last = Math.min(base.count - 2, Math.round((timeS + LATEST_S - base.startS) / base.stepS))
  if (last <= first) return null
  const shiftHz = pitchShift(base, first, roughPitchHz)
  const turn = 2 * Math.PI * shiftHz * base.stepS
  let best = { energy: -1, onset: first }
  let bestAt = 0
  const energies = new Float64Array(QUALITIES.length)
  for (let q = 0; q < QUALITIES.length; q++) {
    const found = explainedEnergy(base, { decayS: QUALITIES[q]! / (Math.PI * roughPitchHz), turn, first, last })
    energies[q] = found.energy
    if (found.energy > best.energy) {
      best = found
      bestAt = q
    }
  }
  const quality = QUALITIES[bestAt]! * QUALITY_STEP ** peakOffset(energies, bestAt)
  const decayS = quality / (Math.PI * roughPitchHz)
  const around = energyBetween(base, best.onset - decayS / base.stepS, best.onset + (2 * decayS) / base.stepS)
  return {
    timeS: base.startS + best.onset * base.stepS,
    pitchHz: roughPitchHz + shiftHz,
    decayS,
    quality,
    explained: around > 0 ? Math.min(1, best.energy / around) : 0,
  }
}

interface Baseband {
  readonly re: Float64Array
  readonly im: Float64Array
  readonly count: number
  readonly startS: number
  readonly stepS: number
  /** Sum of squared magnitudes before each place. */
  readonly energy: Float64Array
}

function basebandAround(map: SoundMap, timeS: number, pitchHz: number): Baseband | null {
  const { samples, sampleRateHz } = map
  const beforeS = 0.03 + 2 / pitchHz
  const afterS = Math.min(0.12, Math.max(0.03, 32 / pitchHz))
  const start = Math.max(0, Math.round((timeS - beforeS) * sampleRateHz))
  const end = Math.min(samples.length, Math.round((timeS + afterS) * sampleRateHz))
  const cycle = Math.max(2, Math.round(sampleRateHz / pitchHz))
  if (end - start < 6 * cycle) return null
  const step = Math.max(1, Math.floor(sampleRateHz / pitchHz / SAMPLES_A_CYCLE))
  const twice = mixedDownAndSummed(samples, { start, end, turn: (2 * Math.PI * pitchHz) / sampleRateHz })
  const count = Math.floor((end - start - 2 * cycle) / step) + 1
  const re = new Float64Array(count)
  const im = new Float64Array(count)
  const energy = new Float64Array(count + 1)
  for (let i = 0, at = 0; i < count; i++, at += step) {
    re[i] = twice.re[at + 2 * cycle]! - 2 * twice.re[at + cycle]! + twice.re[at]!
    im[i] = twice.im[at + 2 * cycle]! - 2 * twice.im[at + cycle]! + twice.im[at]!
    energy[i + 1] = energy[i]! + re[i]! * re[i]! + im[i]! * im[i]!
  }
  // The second difference over a cycle spans 2·cycle − 1 samples; its middle is cycle − 1 after its first.
  return { re, im, energy, count, startS: (start + cycle - 1) / sampleRateHz, stepS: step / sampleRateHz }
}

/**
 * The stretch times exp(−iωt), summed up twice: second differences of it are running means taken twice, at the cost of
 * three look-ups each. Element n holds the sums over what lies before sample n.
 */
function mixedDownAndSummed(
  samples: Float32Array,
  { start, end, turn }: { start: number; end: number; turn: number },
): { re: Float64Array; im: Float64Array } {
  const re = new Float64Array(end - start + 1)
  const im = new Float64Array(end - start + 1)
  const cos = Math.cos(turn)
  const sin = Math.sin(turn)
  let c = 1
  let s = 0
  let reOnce = 0
  let imOnce = 0
  let reTwice = 0
  let imTwice = 0
  for (let i = start, n = 1; i < end; i++, n++) {
    const x = samples[i]!
    reOnce += x * c
    imOnce -= x * s
    reTwice += reOnce
    imTwice += imOnce
    re[n] = reTwice
    im[n] = imTwice
    const next = c * cos - s * sin
    s = c * sin + s * cos
    c = next
  }
  return { re, im }
}

/** How far the tone lies from the pitch it was brought down by, from how its phase turns after its loudest moment. */
function pitchShift(base: Baseband, first: number, pitchHz: number): number {
  const { re, im, count, stepS } = base
  let loudest = first
  let most = -1
  const until = Math.min(count, first + Math.round((LATEST_S - EARLIEST_S + 2 / pitchHz) / stepS))
  for (let i = first; i < until; i++) {
    const energy = re[i]! * re[i]! + im[i]! * im[i]!
    if (energy > most) {
      most = energy
      loudest = i
    }
  }
  const lag = Math.max(1, Math.round(Math.min(0.005, 3 / pitchHz) / stepS))
  const span = Math.round(Math.min(0.03, 12 / pitchHz) / stepS)
  let real = 0
  let imaginary = 0
  for (let i = loudest; i < Math.min(count - lag, loudest + span); i++) {
    real += re[i]! * re[i + lag]! + im[i]! * im[i + lag]!
    imaginary += re[i]! * im[i + lag]! - im[i]! * re[i + lag]!
  }
  const shift = Math.atan2(imaginary, real) / (2 * Math.PI * lag * stepS)
  return Math.max(-0.1 * pitchHz, Math.min(0.1 * pitchHz, shift))
}

function energyBetween({ energy, count }: Baseband, from: number, to: number): number {
  const held = (at: number) => Math.max(0, Math.min(count, Math.round(at)))
  return energy[held(to)]! - energy[held(from)]!
}

interface Trial {
  readonly decayS: number
  readonly turn: number
  readonly first: number
  readonly last: number
}

/** Most energy explained by a tone of this decay, over the onsets allowed. */
function explainedEnergy(base: Baseband, { decayS, turn, first, last }: Trial): { energy: number; onset: number } {
  const { re, im, count, stepS } = base
  const keep = Math.exp(-stepS / decayS)
  const keepSquared = keep * keep
  const cos = keep * Math.cos(turn)
  const sin = -keep * Math.sin(turn)
  let real = 0
  let imaginary = 0
  let templateEnergy = 0
  let most = -1
  let onset = first
  for (let i = count - 1; i >= first; i--) {
    const next = re[i]! + cos * real - sin * imaginary
    imaginary = im[i]! + cos * imaginary + sin * real
    real = next
    templateEnergy = 1 + keepSquared * templateEnergy
    if (i > last) continue
    const energy = (real * real + imaginary * imaginary) / templateEnergy
    if (energy > most) {
      most = energy
      onset = i
    }
  }
  return { energy: most, onset }
}

/** Offset of the top of the parabola through three neighbours, −0.5 to 0.5; 0 at the ends. */
function peakOffset(values: Float64Array, at: number): number {
  if (at === 0 || at === values.length - 1) return 0
  const before = values[at - 1]!
  const after = values[at + 1]!
  const bend = before - 2 * values[at]! + after
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / bend)) : 0
}
