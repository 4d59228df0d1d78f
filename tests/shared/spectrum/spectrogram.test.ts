import { describe, expect, it } from 'vitest'
import { SPECTROGRAM_FLOOR_DB_PER_HZ, spectrogram } from '../../../shared/spectrum/spectrogram'
import { close } from '../../support/close'
import { readSpectrumReference, referenceSignal, sameSpectrogram, whiteNoise } from './signals'

it('has the axes and levels of SciPy’s spectrogram', () => {
  const reference = readSpectrumReference()
  const options = { segmentLength: 512, overlap: 0.75 }
  sameSpectrogram(
    spectrogram(referenceSignal(reference), reference.signal.sample_rate_hz, options),
    reference.spectrogram,
  )
})

describe('spectrogram', () => {
  it('shows a click in its own column however few columns there are, and loses no power', () => {
    const x = whiteNoise(2, 64_000, 1e-4)
    for (let n = 41_000; n < 41_040; n++) x[n] = 0.5
    const narrow = spectrogram(x, 16_000, { segmentLength: 256, maxColumns: 10 })
    expect(narrow.timesS.length).toBe(10)
    const loudest = (column: number) =>
      narrow.levelsDbPerHz
        .subarray(column * narrow.binCount, (column + 1) * narrow.binCount)
        .reduce((a, b) => Math.max(a, b))
    const levels = Array.from(narrow.timesS, (_, column) => loudest(column))
    const at = levels.indexOf(Math.max(...levels))
    close(narrow.timesS[at], 41_020 / 16_000, { abs: 0.21, because: 'within half a column of 0.4 s' })
    expect(levels[at]! - levels.toSorted((a, b) => b - a)[1]!).toBeGreaterThan(30)
  })

  it('averages power: wide columns of steady noise read as the narrow ones do in the mean', () => {
    const x = whiteNoise(3, 100_000)
    const options = { segmentLength: 128, window: 'rectangular', overlap: 0, detrend: 'none' } as const
    const mean = (levels: Float32Array) =>
      levels.reduce((total, level) => total + 10 ** (level / 10), 0) / levels.length
    const wide = mean(spectrogram(x, 8000, { ...options, maxColumns: 71 }).levelsDbPerHz)
    const narrow = mean(spectrogram(x, 8000, options).levelsDbPerHz)
    close(wide, narrow, { rel: 1e-5, because: 'the same segments; 71 columns of 11 are exactly all 781' })
  })

  it('reads silence as its floor, and a clip shorter than a segment as no columns', () => {
    const silent = spectrogram(new Float32Array(1000), 8000, { segmentLength: 256 })
    expect(new Set(silent.levelsDbPerHz)).toEqual(new Set([SPECTROGRAM_FLOOR_DB_PER_HZ]))
    expect(spectrogram(new Float32Array(255), 8000, { segmentLength: 256 }).timesS.length).toBe(0)
  })

  it('refuses a width of no columns', () => {
    expect(() => spectrogram(new Float32Array(1000), 8000, { segmentLength: 256, maxColumns: 0 })).toThrow(
      'maxColumns is 0',
    )
  })
})
