import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { fourier } from '../../../shared/synth/fourier'
import { onGrid } from '../../../shared/synth/grid'
import { minimumPhase } from '../../../shared/synth/minimumPhase'
import { SpectrumSum } from '../../../shared/synth/spectrumSum'
import { close } from '../../support/close'

const RATE = 16000

describe('noise of a spectrum', () => {
  it('has the power its spectrum says, band by band', () => {
    const psd = onGrid((f) => 1e-6 * (f / 500) ** -1.5)
    const samples = new Float64Array(60 * RATE)
    const sum = new SpectrumSum(samples.length, RATE)
    sum.addNoise(psd, new Random('noise 1'))
    sum.addTo(samples, null)
    const n = 2 ** 19
    const re = samples.slice(0, n)
    const im = new Float64Array(n)
    fourier(re, im, -1)
    for (const [lowHz, highHz] of [
      [100, 126],
      [447, 562],
      [1778, 2239],
      [5012, 6310],
    ] as const) {
      let power = 0
      for (let k = Math.ceil((lowHz * n) / RATE); k < (highHz * n) / RATE; k++)
        power += (2 * (re[k]! ** 2 + im[k]! ** 2)) / n / n
      const wanted = 1e-6 * 500 ** 1.5 * 2 * (lowHz ** -0.5 - highHz ** -0.5)
      close(power / wanted, 1, { rel: 0.12, because: 'integral in closed form; 850 and more bins, sd 3 %' })
    }
  })
})

describe('a filter', () => {
  const gain = onGrid((f) => 10 ** (-f / 1000) * (1 + 8 / (1 + ((f - 140) / 40) ** 2)))
  const impulse = (at: number) => {
    const samples = new Float64Array(8000)
    const sum = new SpectrumSum(samples.length, RATE)
    const dry = new Float64Array(sum.length)
    dry[at] = 1
    sum.addFiltered(dry, gain)
    sum.addTo(samples, null)
    return samples
  }
  const energy = (samples: Float64Array) => samples.reduce((a, v) => a + v * v, 0)

  it('lets nothing out before it came in', () => {
    const out = impulse(4000)
    expect(energy(out.subarray(0, 3999)) / energy(out)).toBeLessThan(2e-4)
  })

  it('changes power by its gain', () => {
    const samples = new Float64Array(8000)
    const sum = new SpectrumSum(samples.length, RATE)
    const dry = Float64Array.from({ length: sum.length }, (_, n) =>
      n < 8000 ? Math.sin((2 * Math.PI * 1000 * n) / RATE) : 0,
    )
    sum.addFiltered(
      dry,
      onGrid(() => 0.25),
    )
    sum.addTo(samples, null)
    close(energy(samples) / 8000, 0.125, { rel: 0.01, because: 'a sine of power 1/2 at a quarter' })
  })

  it('of one real pole has the phase of that pole', () => {
    // H = (1 − a)/(1 − a·z⁻¹) is of minimum phase; both amplitude and phase are known in closed form.
    const a = 0.8
    const power = (f: number) => {
      const w = (2 * Math.PI * f) / RATE
      return (1 - a) ** 2 / (1 + a * a - 2 * a * Math.cos(w))
    }
    const phase = minimumPhase(
      onGrid((f) => power(Math.min(f, RATE / 2))),
      RATE,
    )
    for (const f of [300, 1000, 3000]) {
      const w = (2 * Math.PI * f) / RATE
      const wanted = -Math.atan2(a * Math.sin(w), 1 - a * Math.cos(w))
      close(phase[Math.round((f / RATE) * 8192)], wanted, { abs: 0.03, because: 'the grid is read between its points' })
    }
  })
})
