import type { Random } from '../base/random'
import { fourier } from './fourier'
import { GRID_COUNT, gridPlace } from './grid'

/**
 * A sound under construction, as its spectrum: noises of given spectra and filtered sounds are added up, and one
 * transform back gives the samples. Filters are of zero phase: loss in the ground, no delay.
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

  /** Adds a sound through a filter. @param dry `length` samples, used up. @param gain Power gain on the grid. */
  addFiltered(dry: Float64Array, gain: Float64Array): void {
    const amplitude = this.amplitudes(gain)
    const imaginary = new Float64Array(this.length)
    fourier(dry, imaginary, -1)
    for (let k = 1; k < this.length / 2; k++) {
      this.real[k]! += amplitude[k]! * dry[k]!
      this.imaginary[k]! += amplitude[k]! * imaginary[k]!
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
    const log = power.map((p) => Math.log(Math.max(p, 1e-300)) / 2)
    const places = binPlaces(this.length, this.sampleRateHz)
    const amplitudes = new Float64Array(this.length / 2)
    for (let k = 1; k < amplitudes.length; k++) {
      const place = places[k]!
      const g = Math.floor(place)
      const a = log[g]!
      amplitudes[k] = Math.exp(a + (log[Math.min(g + 1, GRID_COUNT - 1)]! - a) * (place - g))
    }
    return amplitudes
  }
}

const known = new Map<string, Float64Array>()

/** Place of every bin on the grid, held within it. */
function binPlaces(length: number, sampleRateHz: number): Float64Array {
  const key = `${length}/${sampleRateHz}`
  let places = known.get(key)
  if (places === undefined) {
    places = Float64Array.from({ length: length / 2 }, (_, k) =>
      k === 0 ? 0 : Math.min(Math.max(gridPlace((k * sampleRateHz) / length), 0), GRID_COUNT - 1),
    )
    known.set(key, places)
  }
  return places
}
