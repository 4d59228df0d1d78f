import { expect, it } from 'vitest'
import { type Biquad, butterworth, filterInPlace } from '../../../shared/audio/biquad'
import { powerToDb } from '../../../shared/base/units'
import { close } from '../../support/close'

/** |H|² at a frequency, from the coefficients. */
function gainDb({ b, a }: Biquad, cyclesPerSample: number): number | null {
  const at = (c: readonly number[]) => {
    const re = c.reduce((sum, ck, k) => sum + ck * Math.cos(2 * Math.PI * cyclesPerSample * k), 0)
    const im = c.reduce((sum, ck, k) => sum - ck * Math.sin(2 * Math.PI * cyclesPerSample * k), 0)
    return re * re + im * im
  }
  return powerToDb(at(b) / at([1, ...a]))
}

it('is 3.01 dB down at its edge, flat on one side and 12 dB an octave down on the other', () => {
  for (const [kind, pass, stop] of [
    ['lowpass', 0.01, 8],
    ['highpass', 100, 1 / 8],
  ] as const) {
    const filter = butterworth(kind, 80, 48_000)
    close(gainDb(filter, 80 / 48_000), -3.0103, { abs: 1e-6, because: 'half the power, by prewarping' })
    close(gainDb(filter, (80 * pass) / 48_000), 0, { abs: 0.01, because: 'flat' })
    close(gainDb(filter, (80 * stop) / 48_000), -36.12, { abs: 0.1, because: 'three octaves of 12.04 dB' })
  }
})

it('has the coefficients that SciPy gives', () => {
  // scipy.signal.butter(2, 80, 'low', fs=3000) and 'high', SciPy 1.10.1.
  const expectedLow = [0.0062633826412869225, 0.012526765282573845, 0.0062633826412869225]
  const expectedHigh = [0.8882523587700273, -1.7765047175400546, 0.8882523587700273]
  const expectedA = [-1.7639779522574806, 0.7890314828226282]
  const low = butterworth('lowpass', 80, 3000)
  const high = butterworth('highpass', 80, 3000)
  for (const [actual, expected] of [
    [low.b, expectedLow],
    [low.a, expectedA],
    [high.b, expectedHigh],
    [high.a, expectedA],
  ] as const) {
    for (const [k, value] of expected.entries()) close(actual[k], value, { rel: 1e-9, because: 'the same formula' })
  }
})

it('does to samples what its response says', () => {
  const filter = butterworth('lowpass', 80, 3000)
  const samples = Float64Array.from({ length: 30_000 }, (_, i) => Math.sin((2 * Math.PI * 160 * i) / 3000))
  filterInPlace(samples, filter)
  const square = samples.slice(3000).reduce((sum, x) => sum + x * x, 0) / 27_000
  close(powerToDb(square / 0.5), gainDb(filter, 160 / 3000)!, {
    abs: 1e-6,
    because: 'whole periods, long after the start',
  })
  expect(samples.every(Number.isFinite)).toBe(true)
})
