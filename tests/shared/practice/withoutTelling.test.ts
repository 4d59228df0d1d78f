import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { withoutTelling } from '../../../shared/practice/withoutTelling'
import { close } from '../../support/close'

const RATE = 16_000
const tone = (hz: number) =>
  Float32Array.from({ length: RATE }, (_, n) => 0.1 * Math.sin((2 * Math.PI * hz * n) / RATE))
const power = (samples: Float32Array, from = 0, to = samples.length) =>
  samples.slice(from, to).reduce((sum, v) => sum + v * v, 0) / (to - from)

describe('a clip without what told', () => {
  it('is the clip itself where nothing told (seed 4)', () => {
    const random = new Random(4)
    const samples = Float32Array.from({ length: 5000 }, () => random.normal(0, 0.1))
    const same = withoutTelling(samples, RATE, { bands: [], rings: [] })
    expect(same).toHaveLength(5000)
    for (const [n, v] of samples.entries()) close(same[n], v, { abs: 1e-6, because: 'single precision' })
  })

  it('loses a tone in a telling band by 30 dB, and keeps one beside it', () => {
    const telling = { bands: [{ lowHz: 500, highHz: 1000 }], rings: [] }
    const loss = (hz: number) =>
      10 * Math.log10(power(withoutTelling(tone(hz), RATE, telling), 2000, 14_000) / power(tone(hz)))
    close(loss(700), -30, { abs: 1, because: 'leakage of the window' })
    close(loss(2000), 0, { abs: 0.1, because: 'leakage of the window' })
  })

  it('loses a ring in its moment only', () => {
    const ring = { timeS: 0.5, pitchHz: 800, decayS: 0.01, tonality: 1, strengthDb: 20 }
    const cut = withoutTelling(tone(800), RATE, { bands: [], rings: [ring] })
    expect(power(cut, 0.51 * RATE, 0.53 * RATE)).toBeLessThan(0.01 * power(tone(800)))
    close(power(cut, 0.1 * RATE, 0.4 * RATE), power(tone(800)), { rel: 0.01, because: 'leakage of the window' })
  })
})
