import type { Rings } from './bubbleTrain'

/** Envelopes are amplitudes every 5 ms. */
export const ENVELOPE_STEP_S = 0.005

/** Noise that swells and ebbs: power per hertz at envelope 1, and the envelope. */
export interface Swelling {
  readonly psd: Float64Array
  readonly envelope: Float32Array
}

/** Rings as they left their source, and the power gain on their way to the file. */
export interface HeardRings {
  readonly rings: Rings
  readonly gain: Float64Array
  /** The ring's energies follow the table of bubbles (decay belongs to pitch). */
  readonly areBubbles: boolean
}

/** A steady tone in the file. */
export interface HeardTone {
  readonly frequencyHz: number
  readonly power: number
}

/** A whistled glide in the file. */
export interface Chirp {
  readonly timeS: number
  readonly durationS: number
  readonly startHz: number
  readonly endHz: number
  readonly amplitude: number
}

/** A voiced sound: harmonics of a gliding pitch under an envelope, with the mean spectrum they fill. */
export interface VoiceSound {
  readonly timeS: number
  readonly durationS: number
  readonly startHz: number
  readonly endHz: number
  /** Power per hertz of the voiced sound at its loudest, on the grid. */
  readonly psd: Float64Array
}

/**
 * What one clip is the sum of. Both entries of the yard, audio and drawn evidence, are made from these same parts.
 */
export interface Parts {
  /** Gaussian noise for the whole clip, power per hertz. */
  readonly steadyPsd: Float64Array
  readonly swelling: Swelling[]
  readonly rings: HeardRings[]
  readonly tones: HeardTone[]
  readonly chirps: Chirp[]
  readonly voices: VoiceSound[]
}
