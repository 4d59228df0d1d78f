import { expect, it } from 'vitest'
import { kaiserBeta, kaiserHalfLength, kaiserWindow } from '../../../shared/audio/kaiserWindow'
import { close } from '../../support/close'

it('is 1 in the middle, even, and falls to 1/I0(β) at its ends', () => {
  expect(kaiserWindow(0, 8.6)).toBe(1)
  expect(kaiserWindow(-0.3, 8.6)).toBe(kaiserWindow(0.3, 8.6))
  // I0(8.6) = 750.5 by Abramowitz & Stegun's rational approximation 9.8.2, worked out below.
  const t = 3.75 / 8.6
  const series = [
    0.39894228, 0.01328592, 0.00225319, -0.00157565, 0.00916281, -0.02057706, 0.02635537, -0.01647633, 0.00392377,
  ]
  const besselI0 = (series.reduceRight((sum, c) => sum * t + c, 0) * Math.exp(8.6)) / Math.sqrt(8.6)
  close(kaiserWindow(1, 8.6), 1 / besselI0, { rel: 1e-6, because: 'the approximation is good to 1.9e-7' })
})

it('is nothing outside, and a rectangle for β = 0', () => {
  expect(kaiserWindow(1.001, 8.6)).toBe(0)
  expect(kaiserWindow(0.9, 0)).toBe(1)
})

it('has an equivalent noise bandwidth of 1.7214 bins and a coherent gain of 0.4208 for β = 8.6', () => {
  // Worked out with SciPy 1.10 from scipy.signal.windows.kaiser(4096, 8.6, sym=False), as tables of windows list them.
  const length = 4096
  const window = Float64Array.from({ length }, (_, i) => kaiserWindow((2 * i) / length - 1, 8.6))
  const sum = window.reduce((a, b) => a + b, 0)
  const squares = window.reduce((a, b) => a + b * b, 0)
  close((length * squares) / sum ** 2, 1.7214, { abs: 1e-4, because: 'four decimals are listed' })
  close(sum / length, 0.4208, { abs: 1e-4, because: 'four decimals are listed' })
})

it('gives Kaiser his own figures: 60 dB needs β = 5.653, and 80 dB over a tenth of the band 51 taps', () => {
  close(kaiserBeta(60), 5.653, { abs: 1e-3, because: 'his formula, to three decimals' })
  close(2 * kaiserHalfLength(80, 0.1), 50.17, { abs: 0.01, because: '(80 − 7.95) / 14.36 / 0.1' })
})
