import Meyda from 'meyda'
import { resample } from '../audio/resample'
import { InputError } from '../base/errors'
import { median, robustSpread } from '../base/statistics'
import { powerToDb } from '../base/units'
import { windowPower, windowSamples } from './windows'

/** The colour of a clip as the detector hears it. */
export interface Timbre {
  /**
   * 13 mel-frequency cepstral coefficients, medians over the frames, as Meyda scales them:
   * twice the unscaled cosine transform of ln(1 + band power).
   */
  readonly mfcc: readonly number[]
  /** Their robust spreads over the frames. */
  readonly mfccSpread: readonly number[]
  /** Median level of each of the 26 mel bands against the clip's own mean square, dB; `null` for a band without power. */
  readonly melBandsDb: readonly (number | null)[]
  /** Frames that were used, 1 to 64. */
  readonly frameCount: number
}

const RATE_HZ = 8000 // chosen: every clip we accept reaches it, so one detector fits all rates
const FRAME_SAMPLES = 512 // 64 ms, two or three rings of a bubble
const MAX_FRAMES = 64 // chosen: enough for medians, and Meyda is some ten times slower than our own spectra
const MEL_BANDS = 26
const COEFFICIENTS = 13

/** Meyda takes ln(1 + power), which flattens quiet clips: all are lifted to where the 1 is some 100 dB under the clip. */
const LIFTED_RMS = 1000

/**
 * Mel bands and cepstral coefficients of at most 64 frames spread over the clip; the only door to Meyda.
 *
 * The clip is brought to 8 kHz and to one level first, so that neither its rate nor its gain shows. The window is ours
 * (periodic Hann), because Meyda's is symmetric. Frames of digital silence are left out. Slow: never on the way to a place.
 *
 * @param samples One channel, finite.
 * @param sampleRateHz A whole number, 8 000 or more.
 * @returns `null` for silence, and for a clip shorter than a frame (64 ms).
 * @throws {InputError} rate below 8 000 or not whole; a sample that is not finite.
 */
export function timbre(samples: Float32Array, sampleRateHz: number): Timbre | null {
  if (!(sampleRateHz >= RATE_HZ)) throw new InputError(`sampleRateHz is ${sampleRateHz}; must be ${RATE_HZ} or more`)
  const clip = levelled(resample(samples, sampleRateHz, RATE_HZ))
  if (clip === null || clip.length < FRAME_SAMPLES) return null
  const frames = spreadFrames(clip)
  if (frames.length === 0) return null
  configureMeyda()
  const each = frames.map(extract)
  const ofEach = (pick: (frame: MelFrame) => readonly number[], index: number) => each.map((f) => pick(f)[index]!)
  const coefficients = Array.from({ length: COEFFICIENTS }, (_, i) => ofEach((frame) => frame.mfcc, i))
  return {
    mfcc: coefficients.map(median),
    mfccSpread: coefficients.map(robustSpread),
    melBandsDb: Array.from({ length: MEL_BANDS }, (_, i) => bandDb(median(ofEach((frame) => frame.melBands, i)))),
    frameCount: frames.length,
  }
}

function levelled(samples: Float32Array): Float64Array | null {
  let sum = 0
  for (let n = 0; n < samples.length; n++) sum += samples[n]! ** 2
  if (!Number.isFinite(sum)) throw new InputError('samples hold a number that is not finite')
  const gain = LIFTED_RMS / Math.sqrt(sum / samples.length)
  return sum === 0 ? null : Float64Array.from(samples, (sample) => gain * sample)
}

function spreadFrames(clip: Float64Array): Float32Array[] {
  const window = windowSamples('hann', FRAME_SAMPLES)
  const room = clip.length - FRAME_SAMPLES
  const count = Math.min(MAX_FRAMES, 1 + Math.floor(room / FRAME_SAMPLES))
  const frames = Array.from({ length: count }, (_, i) => {
    const start = count > 1 ? Math.round((i * room) / (count - 1)) : Math.round(room / 2)
    return Float32Array.from(window, (w, n) => w * clip[start + n]!)
  })
  return frames.filter((frame) => frame.some((sample) => sample !== 0))
}

/**
 * Meyda's settings are properties of one object shared by the whole program, and its mel filters are not remade when the
 * frame size or the rate changes: both are put right before every clip.
 */
function configureMeyda(): void {
  Object.assign(Meyda, {
    bufferSize: FRAME_SAMPLES,
    sampleRate: RATE_HZ,
    melBands: MEL_BANDS,
    numberOfMFCCCoefficients: COEFFICIENTS,
    windowingFunction: 'rect',
    melFilterBank: undefined,
  })
}

interface MelFrame {
  readonly mfcc: readonly number[]
  /** ln(1 + Σ filter·|X|²) of each band. */
  readonly melBands: readonly number[]
}

function extract(frame: Float32Array): MelFrame {
  if (frame.length !== FRAME_SAMPLES) {
    throw new InputError(`frame has ${frame.length} samples; must have ${FRAME_SAMPLES}`)
  }
  const features: Partial<MelFrame> | null = Meyda.extract(['mfcc', 'melBands'], frame)
  const { mfcc, melBands } = features ?? {}
  if (mfcc?.length !== COEFFICIENTS || melBands?.length !== MEL_BANDS) {
    throw new InputError(`Meyda gave ${mfcc?.length} coefficients of ${melBands?.length} bands`)
  }
  return { mfcc, melBands }
}

/** Level of a band against the lifted clip: Meyda's bins are |X|² of one side. */
function bandDb(logPower: number): number | null {
  const windowed = windowPower(windowSamples('hann', FRAME_SAMPLES))
  return powerToDb((2 * Math.expm1(logPower)) / (FRAME_SAMPLES * windowed * LIFTED_RMS ** 2))
}
