import { describe, expect, it } from 'vitest'
import { type WindowName, windowPower, windowSamples } from '../../../shared/spectrum/windows'
import { close } from '../../support/close'
import { readSpectrumReference } from './signals'

const NAMES: WindowName[] = ['rectangular', 'hann', 'hamming', 'blackman', 'blackman-harris']

describe('windowSamples', () => {
  it.each(Object.entries(readSpectrumReference().windows_of_16))(
    'agrees with SciPy get_window(…, fftbins=True) for %s',
    (name, expected) => {
      windowSamples(name as WindowName, 16).forEach((w, n) => {
        close(w, expected[n]!, { abs: 1e-14, because: 'the same formula in double precision' })
      })
    },
  )

  it.each(NAMES)('%s is periodic: symmetric about its middle sample and highest there', (name) => {
    const window = windowSamples(name, 64)
    for (let n = 1; n < 64; n++) close(window[n], window[64 - n]!, { abs: 1e-14, because: 'cosines are even' })
    close(window[32], 1, { abs: 1e-14, because: 'the coefficients of every window sum to 1' })
  })

  it('a periodic Hann overlapped by half sums to 1 everywhere', () => {
    const window = windowSamples('hann', 128)
    for (let n = 0; n < 64; n++) close(window[n]! + window[n + 64]!, 1, { abs: 1e-15, because: 'sin² + cos²' })
  })

  it('the power of a Hann window is 3/8 of its length', () => {
    close(windowPower(windowSamples('hann', 400)), 150, { rel: 1e-13, because: 'mean of sin⁴ is 3/8' })
  })

  it.each([0, -3, 2.5, Number.NaN])('refuses a length of %s', (length) => {
    expect(() => windowSamples('hann', length)).toThrow(`window length is ${length}`)
  })
})
