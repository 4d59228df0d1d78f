import { InputError } from '../base/errors'
import type { PassBand } from './passBand'

/** One second-order filter in the way Web Audio's biquad takes it: for high- and low-pass its Q is in dB. */
export interface FilterStage {
  readonly type: 'highpass' | 'lowpass'
  readonly frequencyHz: number
  readonly qDb: number
}

/** Quality factors of the two halves of a fourth-order Butterworth: 1/(2·cos(π/8)) and 1/(2·cos(3π/8)). */
const HALVES = [1 / (2 * Math.cos(Math.PI / 8)), 1 / (2 * Math.cos((3 * Math.PI) / 8))]

/** Filters work up to this share of the sample rate. */
const HIGHEST_SHARE_OF_RATE = 0.49

/**
 * A band-pass for listening: fourth-order Butterworth on either side, 24 dB an octave, −3.01 dB at both edges of a wide
 * band.
 *
 * @param sampleRateHz Of the audio context that runs the filters. An edge above 0.49 of it is brought down to that.
 * @returns High-passes first.
 * @throws {InputError} edges that are not in rising order above 0; a rate that is not above 0.
 * @see Web Audio API, BiquadFilterNode (Q of high- and low-pass in dB); Butterworth poles. [WebAudio],
 *      [OppenheimSchafer2010] in shared/base/sources.ts
 */
export function bandPassStages({ lowHz, highHz }: PassBand, sampleRateHz: number): FilterStage[] {
  if (!(sampleRateHz > 0)) throw new InputError(`sampleRateHz is ${sampleRateHz}; must be above 0`)
  if (!(lowHz > 0 && highHz > lowHz)) throw new InputError(`pass band is ${lowHz} to ${highHz} Hz; must rise`)
  const within = (hz: number) => Math.min(hz, HIGHEST_SHARE_OF_RATE * sampleRateHz)
  const stages = (type: FilterStage['type'], hz: number) =>
    HALVES.map((q) => ({ type, frequencyHz: within(hz), qDb: 20 * Math.log10(q) }))
  return [...stages('highpass', lowHz), ...stages('lowpass', highHz)]
}
