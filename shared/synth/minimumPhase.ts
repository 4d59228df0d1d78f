import { DB_PER_NEPER } from '../base/units'
import { fourier } from './fourier'
import { logAmplitudes } from './logAmplitudes'

const LENGTH = 8192

/** What lies further below the loudest frequency than this does not shape the phase, nepers: 100 dB. */
const DEEPEST = 100 / DB_PER_NEPER

/**
 * Phase that belongs to a gain when nothing may come out before it went in: the Hilbert transform of the logarithm of
 * the amplitude, by folding the cepstrum.
 *
 * @param gain Power gain on the grid.
 * @returns Radians at LENGTH/2 + 1 even frequencies from 0 to half the rate; 0 at both ends.
 * @see Oppenheim & Schafer, Discrete-Time Signal Processing, on the cepstrum. [OppenheimSchafer2010]
 */
export function minimumPhase(gain: Float64Array, sampleRateHz: number): Float64Array {
  const log = logAmplitudes(gain, LENGTH, sampleRateHz)
  let top = log[0]!
  for (const v of log) top = Math.max(top, v)
  const real = new Float64Array(LENGTH)
  const imaginary = new Float64Array(LENGTH)
  for (let k = 0; k <= LENGTH / 2; k++) {
    real[k] = Math.max(log[Math.min(k, LENGTH / 2 - 1)]!, top - DEEPEST)
    real[(LENGTH - k) % LENGTH] = real[k]!
  }
  fourier(real, imaginary, 1)
  for (let n = 0; n < LENGTH; n++) {
    const fold = n === 0 || n === LENGTH / 2 ? 1 : n < LENGTH / 2 ? 2 : 0
    real[n] = (real[n]! * fold) / LENGTH
    imaginary[n] = 0
  }
  fourier(real, imaginary, -1)
  return imaginary.slice(0, LENGTH / 2 + 1)
}
