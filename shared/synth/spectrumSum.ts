import type { Random } from '../base/random'
import { fourier } from './fourier'
import { logAmplitudes } from './logAmplitudes'
import { minimumPhase } from './minimumPhase'

/**
 * A sound under construction, as its spectrum: noises of given spectra and filtered sounds are added up, and one
 * transform back gives the samples.
 */
export class SpectrumSum {
  /** Samples a sound to be filtered must have: the clip's, then silence up to a power of two. */
  readonly length: number
  private readonly real: Float64Array
  private readonly imaginary: Float64Array

  constructor(
    samples: number,
    private readonly sampleRateHz: number,
  ) {
    // A twentieth of a second more, so that a filter's tail does not come in again at the start.
    this.length = 2 ** Math.ceil(Math.log2(samples + 0.05 * sampleRateHz))
    this.real = new Float64Array(this.length)
    this.imaginary = new Float64Array(this.length)
  }

  /** Adds Gaussian noise. @param psd One-sided power per hertz on the grid. */
  addNoise(psd: Float64Array, random: Random): void {
    const amplitude = this.amplitudes(psd)
    const scale = Math.sqrt((this.sampleRateHz * this.length) / 4)
    for (let k = 1; k < this.length / 2; k++) {
      const a = amplitude[k]! * scale
      this.real[k]! += a * random.normal()
      this.imaginary[k]! += a * random.normal()
    }
  }

  /**
   * Adds a sound through a filter of minimum phase: the way through the ground delays and smears only as much as its
   * loss demands, and nothing is heard before it happens.
   *
   * @param dry `length` samples, used up. @param gain Power gain on the grid.
   */
  addFiltered(dry: Float64Array, gain: Float64Array): void {
    const amplitude = this.amplitudes(gain)
    const phase = minimumPhase(gain, this.sampleRateHz)
    const perBin = (2 * (phase.length - 1)) / this.length
    const imaginary = new Float64Array(this.length)
    fourier(dry, imaginary, -1)
    for (let k = 1; k < this.length / 2; k++) {
      const place = k * perBin
      const i = Math.floor(place)
      const angle = phase[i]! + (phase[i + 1]! - phase[i]!) * (place - i)
      const re = amplitude[k]! * Math.cos(angle)
      const im = amplitude[k]! * Math.sin(angle)
      this.real[k]! += re * dry[k]! - im * imaginary[k]!
      this.imaginary[k]! += re * imaginary[k]! + im * dry[k]!
    }
  }

  /** Adds the sound to samples, times an envelope. The sum is used up. */
  addTo(samples: Float64Array, envelope: Float64Array | null): void {
    const { real, imaginary, length } = this
    for (let k = 1; k < length / 2; k++) {
      real[length - k] = real[k]!
      imaginary[length - k] = -imaginary[k]!
    }
    fourier(real, imaginary, 1)
    for (let n = 0; n < samples.length; n++) samples[n]! += (real[n]! / length) * (envelope?.[n] ?? 1)
  }

  /** Square root of a spectrum on the grid at every bin: straight lines in decibels over the logarithm of frequency. */
  private amplitudes(power: Float64Array): Float64Array {
    return logAmplitudes(power, this.length, this.sampleRateHz).map(Math.exp)
  }
}
