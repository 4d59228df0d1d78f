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

/** Quality factors tried; between them the best is found by a parabola. */
const QUALITIES = Float64Array.of(3, 5, 8, 13, 21, 34, 55, 90, 150)
const QUALITY_STEP = 1.64 // mean ratio of the above

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
  const around = base.energyBetween(best.onset - decayS / base.stepS, best.onset + (2 * decayS) / base.stepS)
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
  /** Sum of squared magnitudes between two places. */
  energyBetween(from: number, to: number): number
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
  const { re, im } = mixedDown(samples, { start, end, turn: (2 * Math.PI * pitchHz) / sampleRateHz })
  const slow = { re: averagedTwice(re, cycle, step), im: averagedTwice(im, cycle, step) }
  const count = slow.re.length
  const sums = new Float64Array(count + 1)
  for (let i = 0; i < count; i++) sums[i + 1] = sums[i]! + slow.re[i]! * slow.re[i]! + slow.im[i]! * slow.im[i]!
  const held = (at: number) => Math.max(0, Math.min(count, Math.round(at)))
  return {
    ...slow,
    count,
    startS: start / sampleRateHz,
    stepS: step / sampleRateHz,
    energyBetween: (from, to) => sums[held(to)]! - sums[held(from)]!,
  }
}

function mixedDown(samples: Float32Array, { start, end, turn }: { start: number; end: number; turn: number }) {
  const re = new Float64Array(end - start)
  const im = new Float64Array(end - start)
  const cos = Math.cos(turn)
  const sin = Math.sin(turn)
  let c = 1
  let s = 0
  for (let i = 0, at = start; at < end; i++, at++) {
    const x = samples[at]!
    re[i] = x * c
    im[i] = -x * s
    const next = c * cos - s * sin
    s = c * sin + s * cos
    c = next
  }
  return { re, im }
}

/** Running mean over a cycle, twice, centred, every `step`-th value. */
function averagedTwice(values: Float64Array, cycle: number, step: number): Float64Array {
  const once = new Float64Array(values.length)
  const half = cycle >> 1
  let sum = 0
  for (let i = 0; i < values.length + half; i++) {
    if (i < values.length) sum += values[i]!
    if (i >= cycle) sum -= values[i - cycle]!
    if (i >= half) once[i - half] = sum
  }
  const result = new Float64Array(Math.floor(values.length / step))
  const back = cycle - 1 - half
  sum = 0
  for (let i = 0, next = 0, at = 0; i < values.length + back && at < result.length; i++) {
    if (i < values.length) sum += once[i]!
    if (i >= cycle) sum -= once[i - cycle]!
    if (i - back === next) {
      result[at++] = sum / (cycle * cycle)
      next += step
    }
  }
  return result
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
  const cos = keep * Math.cos(turn)
  const sin = -keep * Math.sin(turn)
  let real = 0
  let imaginary = 0
  let most = -1
  let onset = first
  for (let i = count - 1; i >= first; i--) {
    const next = re[i]! + cos * real - sin * imaginary
    imaginary = im[i]! + cos * imaginary + sin * real
    real = next
    if (i > last) continue
    const energy = real * real + imaginary * imaginary
    if (energy > most) {
      most = energy
      onset = i
    }
  }
  return { energy: most * (1 - keep * keep), onset }
}

/** Offset of the top of the parabola through three neighbours, −0.5 to 0.5; 0 at the ends. */
function peakOffset(values: Float64Array, at: number): number {
  if (at === 0 || at === values.length - 1) return 0
  const before = values[at - 1]!
  const after = values[at + 1]!
  const bend = before - 2 * values[at]! + after
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / bend)) : 0
}
