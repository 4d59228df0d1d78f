import { Random } from '../../../shared/base/random'
import { transformOfSize, transformSizeFor } from '../../../shared/spectrum/powerSpectrum'

/** Signal-to-noise ratios of scenes are over the pitches that tell of a leak below soil, Hz. */
const TELLING_BAND = { fromHz: 150, toHz: 1600 }

/**
 * A sound as 40 cm of soil would let it through: a loss in dB proportional to frequency, without delay.
 *
 * @param lossDbPerKhz 4.8 to 38.4 for 40 cm of the soils measured by Oelze, O'Brien & Darmody 2002 (0.12 to 0.96 dB per
 *   cm and kHz). [OelzeOBrienDarmody2002]
 */
export function throughSoil(samples: Float32Array, sampleRateHz: number, lossDbPerKhz: number): Float32Array {
  return filtered(samples, sampleRateHz, (hz) => 10 ** (-Math.min(300, (lossDbPerKhz * hz) / 1000) / 20))
}

/** Noise of equal power an octave (within half a decibel from 30 Hz up at 48 kHz), from a seed. */
export function pinkNoise(count: number, seed: number | string): Float32Array {
  const random = new Random(seed)
  const noise = new Float32Array(count)
  let slow = 0
  let middle = 0
  let quick = 0
  // Three leaky sums whose corners an octave-wide ladder apart make a slope of 3 dB an octave; the well known set.
  for (let i = 0; i < count; i++) {
    const white = random.normal()
    slow = 0.99765 * slow + white * 0.099046
    middle = 0.963 * middle + white * 0.2965164
    quick = 0.57 * quick + white * 1.0526913
    noise[i] = 0.1 * (slow + middle + quick + white * 0.1848)
  }
  return noise
}

/** Sum of a sound and a noise scaled to stand `snrDb` under it between 150 and 1600 Hz. */
export function inNoise(sound: Float32Array, noise: Float32Array, sampleRateHz: number, snrDb: number): Float32Array {
  const gain = Math.sqrt(bandPower(sound, sampleRateHz) / bandPower(noise, sampleRateHz) / 10 ** (snrDb / 10))
  return sound.map((value, i) => value + gain * noise[i]!)
}

function bandPower(samples: Float32Array, sampleRateHz: number): number {
  const { fromHz, toHz } = TELLING_BAND
  const band = filtered(samples, sampleRateHz, (hz) => (hz >= fromHz && hz <= toHz ? 1 : 0))
  return band.reduce((sum, value) => sum + value * value, 0) / band.length
}

function filtered(samples: Float32Array, sampleRateHz: number, gainAt: (hz: number) => number): Float32Array {
  const size = transformSizeFor(samples.length + Math.round(0.1 * sampleRateHz))
  const transform = transformOfSize(size)
  const time = new Float64Array(2 * size)
  const spectrum = new Float64Array(2 * size)
  for (let i = 0; i < samples.length; i++) time[2 * i] = samples[i]!
  transform.complex(spectrum, time)
  for (let k = 0; k < size; k++) {
    const gain = gainAt((Math.min(k, size - k) * sampleRateHz) / size)
    spectrum[2 * k]! *= gain
    spectrum[2 * k + 1]! *= gain
  }
  transform.inverse(time, spectrum)
  return Float32Array.from(samples, (_, i) => time[2 * i]!)
}
