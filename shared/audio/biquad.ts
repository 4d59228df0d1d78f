/** Second-order Butterworth, as a passes-in passes-out loop over an array. */
export interface Biquad {
  readonly b: readonly [number, number, number]
  /** a1 and a2; a0 is 1. */
  readonly a: readonly [number, number]
}

/**
 * Second-order Butterworth filter by the bilinear transform with prewarping: −3.01 dB at its edge, 12 dB an octave beyond.
 *
 * @param edgeHz Above 0, below half the sample rate.
 * @see Oppenheim & Schafer, Discrete-time signal processing, chapter 7. [OppenheimSchafer2010]
 */
export function butterworth(kind: 'lowpass' | 'highpass', edgeHz: number, sampleRateHz: number): Biquad {
  const k = Math.tan((Math.PI * edgeHz) / sampleRateHz)
  const norm = 1 / (1 + Math.SQRT2 * k + k * k)
  const gain = kind === 'lowpass' ? k * k * norm : norm
  return {
    b: [gain, kind === 'lowpass' ? 2 * gain : -2 * gain, gain],
    a: [2 * (k * k - 1) * norm, (1 - Math.SQRT2 * k + k * k) * norm],
  }
}

/**
 * Runs a filter over samples, in place, from rest.
 *
 * @param samples Changed.
 */
export function filterInPlace(samples: Float32Array | Float64Array, filter: Biquad): void {
  const [b0, b1, b2] = filter.b
  const [a1, a2] = filter.a
  let first = 0
  let second = 0
  for (let i = 0; i < samples.length; i++) {
    const x = samples[i]!
    const y = b0 * x + first
    first = b1 * x - a1 * y + second
    second = b2 * x - a2 * y
    samples[i] = y
  }
}
