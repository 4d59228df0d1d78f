import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { resample } from '../../../shared/audio/resample'
import { type BandLevels, bandLevels } from '../../../shared/spectrum/bandLevels'
import { THIRD_OCTAVE_BANDS } from '../../../shared/spectrum/thirdOctaveBands'
import { close } from '../../support/close'
import { readSpectrumReference, referenceSignal, sine, whiteNoise } from './signals'

const KEYS = ['levelDbFs', 'quietDbFs', 'busyDbFs', 'steadyDbFs'] as const
const FIRST_WITH_QUIET = 4 // 160 Hz
const indexOf = (nominalHz: number) => THIRD_OCTAVE_BANDS.findIndex((band) => band.nominalHz === nominalHz)
const told = (rows: readonly BandLevels[], key: (typeof KEYS)[number]) => rows.map((row) => row[key])

/** Level of white noise of mean square 1 in a band. */
const whiteDb = (band: number, rateHz: number) =>
  10 * Math.log10((THIRD_OCTAVE_BANDS[band]!.upperHz - THIRD_OCTAVE_BANDS[band]!.lowerHz) / (rateHz / 2))

describe('bandLevels and tones', () => {
  it.each([8000, 11_025, 16_000, 44_100, 48_000, 96_000])(
    'a full-scale sine reads -3.01 dBFS mid-band at %i Hz',
    (rateHz) => {
      for (const [index, { midHz, upperHz }] of THIRD_OCTAVE_BANDS.entries()) {
        if (upperHz > 0.45 * rateHz) continue
        close(bandLevels(sine(midHz, rateHz, 2 * rateHz), rateHz)[index]!.levelDbFs, -3.01, {
          abs: 0.03,
          because: 'the skirts of a Hann line reach out of the narrowest bands a little',
        })
      }
    },
  )

  /**
   * Class 1 limits of the relative attenuation, IEC 61260-1:2014 [IEC61260], as three independent open implementations have them, at
   * exponents of G for octave bands; between two of them the limits run straight in dB. The reference attenuation is 0.
   * Tried with steady tones of 1 s at each breakpoint and half-way to the next, on both sides of each band, as far as
   * there is such a tone below half the rate. The inner and outer limit of the edge itself are both held to.
   */
  const INSIDE = { exponent: [0, 1 / 8, 1 / 4, 3 / 8, 1 / 2], least: -0.4, most: [0.4, 0.5, 0.7, 1.4, 5.3] }
  const OUTSIDE = { exponent: [1 / 2, 1, 2, 3, 4], least: [1.2, 16.6, 40.5, 60, 70] }
  const G = 10 ** 0.3
  /** The standard's rule for carrying an octave band's breakpoint over to a third-octave band. */
  const thirdOctaveRatio = (exponent: number) => 1 + ((G ** (1 / 6) - 1) / (G ** 0.5 - 1)) * (G ** exponent - 1)
  /** Each breakpoint and the middle between it and the next. */
  const withMiddles = (list: readonly number[]) =>
    list.flatMap((value, i) => (i + 1 < list.length ? [value, (value + list[i + 1]!) / 2] : [value]))

  it('carries breakpoints over as the older mask prints them for third octaves', () => {
    const printed = [1.02667, 1.05575, 1.08746, 1.12202, 1.29437, 1.88173, 3.05365, 5.39195]
    ;[1 / 8, 1 / 4, 3 / 8, 1 / 2, 1, 2, 3, 4].forEach((exponent, i) => {
      close(thirdOctaveRatio(exponent), printed[i]!, { abs: 1e-5, because: 'five decimals are printed' })
    })
  })

  it.each([8000, 48_000])('every band keeps within the class 1 limits at %i Hz', (rateHz) => {
    const bands = THIRD_OCTAVE_BANDS.filter((band) => band.upperHz <= 0.45 * rateHz)
    const attenuationDb = (band: number, frequencyHz: number) => {
      // A tone exactly at half the rate has no sine part; above it there is no tone.
      if (frequencyHz > 0.49 * rateHz) return null
      const level = bandLevels(sine(frequencyHz, rateHz, rateHz), rateHz)[band]!.levelDbFs
      return -3.0103 - (level ?? -300)
    }
    for (const [index, { midHz, nominalHz }] of bands.entries()) {
      for (const side of [1, -1]) {
        const at = (exponent: number) => attenuationDb(index, midHz * thirdOctaveRatio(exponent) ** side)
        const most = withMiddles(INSIDE.most)
        for (const [i, exponent] of withMiddles(INSIDE.exponent).entries()) {
          const lost = at(exponent)
          expect(lost, `${nominalHz} Hz, ${side * exponent} inside`).toBeGreaterThanOrEqual(INSIDE.least)
          expect(lost, `${nominalHz} Hz, ${side * exponent} inside`).toBeLessThanOrEqual(most[i]!)
        }
        const least = withMiddles(OUTSIDE.least)
        for (const [i, exponent] of withMiddles(OUTSIDE.exponent).entries()) {
          const lost = at(exponent)
          if (lost !== null)
            expect(lost, `${nominalHz} Hz, ${side * exponent} outside`).toBeGreaterThanOrEqual(least[i]!)
        }
      }
    }
  })

  it('tones far above a band stay 70 dB down although the low bands are measured at a low rate', () => {
    for (let frequencyHz = 2700; frequencyHz < 24_000; frequencyHz += 613) {
      const rows = bandLevels(sine(frequencyHz, 48_000, 48_000), 48_000)
      for (const row of rows.filter((r) => r.midHz * 5.392 < frequencyHz)) {
        expect(row.levelDbFs ?? -300, `${frequencyHz} Hz in the band at ${row.midHz} Hz`).toBeLessThan(-73)
      }
    }
  })
})

describe('bandLevels against SciPy', () => {
  const reference = readSpectrumReference()
  const rows = bandLevels(Float32Array.from(referenceSignal(reference)), reference.signal.sample_rate_hz)

  it('has its levels: Welch densities with equal segments, integrated over the same bands', () => {
    reference.third_octaves.forEach(({ mid_hz, level_dbfs }, index) => {
      close(rows[index]!.midHz, mid_hz, { rel: 1e-12, because: 'the same formula' })
      close(rows[index]!.levelDbFs, level_dbfs, { abs: 0.02, because: 'our low bands come from a decimated clip' })
    })
  })
})

describe('bandLevels and steady noise', () => {
  it.each([
    { rateHz: 8000, clips: 50 },
    { rateHz: 16_000, clips: 40 },
    { rateHz: 44_100, clips: 16 },
    { rateHz: 48_000, clips: 16 },
    { rateHz: 96_000, clips: 10 },
  ])(
    'white noise reads its true level in every band, mean, quiet, busy and steady, at $rateHz Hz',
    ({ rateHz, clips }) => {
      const sums = THIRD_OCTAVE_BANDS.map(() => [0, 0, 0, 0])
      for (let clip = 0; clip < clips; clip++) {
        const rows = bandLevels(whiteNoise(`white ${rateHz} ${clip}`, 6 * rateHz), rateHz)
        rows.forEach((row, b) => {
          KEYS.forEach((key, k) => {
            sums[b]![k]! += 10 ** ((row[key] ?? Number.NaN) / 10) / clips
          })
        })
      }
      for (const [b, { upperHz, nominalHz }] of THIRD_OCTAVE_BANDS.entries()) {
        KEYS.forEach((key, k) => {
          const none = upperHz > 0.45 * rateHz || (b < FIRST_WITH_QUIET && (key === 'quietDbFs' || key === 'busyDbFs'))
          if (none) {
            expect(sums[b]![k], `${key} at ${nominalHz} Hz`).toBeNaN()
            return
          }
          // One 6 s clip scatters by 0.5 dB at 63 Hz and 0.1 dB at 6.3 kHz.
          const scatterDb = ([0.5, 0.45, 0.45, 0.4][b] ?? 0.35) / Math.sqrt(clips)
          close(10 * Math.log10(sums[b]![k]!), whiteDb(b, rateHz), {
            abs: 0.15 + 3 * scatterDb,
            because: `${key} at ${nominalHz} Hz: 0.15 dB for the chi-squared form, and three standard errors`,
          })
        })
      }
    },
  )

  it('white noise rises by 1.000 dB from band to band', () => {
    const levels = told(bandLevels(whiteNoise('long', 16_000 * 200), 16_000), 'levelDbFs')
    const first = indexOf(200)
    const rise = (levels[20]! - levels[first]!) / (20 - first)
    close(rise, 1, { abs: 0.01, because: 'a band is 10^0.1 wider than the one below; 200 s of noise' })
    for (let b = first + 1; b < levels.length; b++) {
      close(levels[b]! - levels[b - 1]!, 1, { abs: 0.1, because: 'neighbours scatter by 0.05 dB each at 200 Hz' })
    }
  })

  it('a clip of 1 s has every level, without bias', () => {
    const clips = 150
    const sums = THIRD_OCTAVE_BANDS.map(() => [0, 0, 0, 0])
    for (let clip = 0; clip < clips; clip++) {
      bandLevels(whiteNoise(`short ${clip}`, 16_000), 16_000).forEach((row, b) => {
        KEYS.forEach((key, k) => {
          sums[b]![k]! += 10 ** ((row[key] ?? Number.NaN) / 10) / clips
        })
      })
    }
    for (const [b, row] of sums.entries()) {
      KEYS.forEach((key, k) => {
        if (b < FIRST_WITH_QUIET && (key === 'quietDbFs' || key === 'busyDbFs')) return
        close(10 * Math.log10(row[k]!), whiteDb(b, 16_000), {
          abs: b < FIRST_WITH_QUIET ? 0.4 : 0.3,
          because: `${key}: one clip scatters by 1.5 dB at 63 Hz and 0.9 dB at 160 Hz`,
        })
      })
    }
  })
})

describe('bandLevels and unsteady sound', () => {
  const rateHz = 16_000
  const shift = (noise: Float32Array, other: Float32Array, key: (typeof KEYS)[number]) => {
    const before = told(bandLevels(noise, rateHz), key)
    return told(bandLevels(other, rateHz), key).map((level, b) => (level === null ? null : level - before[b]!))
  }
  const louder = (noise: Float32Array, gain: number, when: (timeS: number) => boolean) =>
    noise.map((v, n) => (when(n / rateHz) ? gain * v : v))

  it.each([0.4, 1.17, 2.83, 4.6, 5.5])(
    'one footstep at %f s, 20 dB over the rest, moves steady by 0.7 dB at most',
    (atS) => {
      const noise = whiteNoise(`step ${atS}`, 6 * rateHz, 0.01)
      const step = louder(noise, 10, (t) => t >= atS && t < atS + 0.15)
      for (const moved of shift(noise, step, 'steadyDbFs')) expect(Math.abs(moved!)).toBeLessThanOrEqual(0.7)
      for (const moved of shift(noise, step, 'levelDbFs')) expect(moved).toBeGreaterThan(2)
    },
  )

  it('a thump that rings at 90 Hz, 30 dB over the lowest bands in the mean, leaves steady where it was', () => {
    const noise = whiteNoise('thump', 6 * rateHz, 0.01)
    const thump = noise.map((v, n) => {
      const t = n / rateHz - 3.1
      return t < 0 ? v : v + 0.5 * Math.exp(-t / 0.05) * Math.sin(2 * Math.PI * 90 * t)
    })
    for (const moved of shift(noise, thump, 'steadyDbFs')) expect(Math.abs(moved!)).toBeLessThanOrEqual(0.7)
    expect(shift(noise, thump, 'levelDbFs')[indexOf(80)]).toBeGreaterThan(25)
  })

  it.each([
    { name: 'in one piece', when: (t: number) => t >= 2.1 && t < 3.9 },
    { name: 'in gulps of 0.3 s', when: (t: number) => t % 1 < 0.3 },
  ])(
    'a gurgle on for 30 % of the clip, 20 dB over the rest, shows in busy and steady, not in quiet: $name',
    ({ when }) => {
      const noise = whiteNoise('gurgle', 6 * rateHz, 0.01)
      const gurgle = louder(noise, 10, when)
      for (const moved of shift(noise, gurgle, 'busyDbFs')) if (moved !== null) expect(moved).toBeGreaterThan(15)
      for (const moved of shift(noise, gurgle, 'steadyDbFs')) expect(moved).toBeGreaterThan(11)
      for (const moved of shift(noise, gurgle, 'quietDbFs')) if (moved !== null) expect(moved).toBeLessThan(2)
    },
  )
})

describe('bandLevels in general', () => {
  const rateHz = 16_000

  it('gain moves every level by itself and changes no null, seed 4', () => {
    const noise = whiteNoise('gain', 2 * rateHz)
    const plain = bandLevels(noise, rateHz)
    fc.assert(
      fc.property(fc.integer({ min: -120, max: 20 }), (gainDb) => {
        const changed = bandLevels(
          noise.map((v) => v * 10 ** (gainDb / 20)),
          rateHz,
        )
        for (const key of KEYS) {
          for (const [b, level] of told(changed, key).entries()) {
            const before = plain[b]![key]
            if (before === null) expect(level).toBeNull()
            else close(level, before + gainDb, { abs: 1e-4, because: 'samples in single precision' })
          }
        }
      }),
      { seed: 4, numRuns: 8 },
    )
  })

  it('a constant 60 dB over the sound changes no band by 0.05 dB', () => {
    const noise = whiteNoise('constant', 3 * rateHz, 1e-3)
    const plain = bandLevels(noise, rateHz)
    const offset = bandLevels(
      noise.map((v) => v + 0.5),
      rateHz,
    )
    for (const key of KEYS) {
      offset.forEach((row, b) => {
        if (row[key] !== null)
          close(row[key], plain[b]![key]!, { abs: 0.05, because: 'Hann skirts fall by 18 dB an octave' })
      })
    }
  })

  it('one sound at two rates reads alike', () => {
    const noise = whiteNoise('rates', 3 * 44_100, 0.1)
    const swell = noise.map((v, n) => v * (1 + 0.9 * Math.sin((2 * Math.PI * 0.7 * n) / 44_100)))
    const at44 = bandLevels(swell, 44_100)
    for (const rate of [16_000, 48_000]) {
      const there = bandLevels(resample(swell, 44_100, rate), rate)
      for (const key of KEYS) {
        at44.forEach((row, b) => {
          if (row[key] === null) expect(there[b]![key]).toBeNull()
          else
            close(there[b]![key], row[key], {
              abs: 0.3,
              because: 'frames begin within a sample of each other; one may pass the mark of an exception',
            })
        })
      }
    }
  })

  it('a band whose upper edge lies above 0.45 of the rate is null, never 0', () => {
    const levels = told(bandLevels(whiteNoise(1, 16_000), 8000), 'levelDbFs')
    expect(levels.slice(0, indexOf(3150) + 1).every((level) => level !== null)).toBe(true)
    expect(levels.slice(indexOf(4000))).toEqual([null, null, null])
  })

  it('quiet and busy are null below 160 Hz, where a band is narrower than 4 bins of a short frame', () => {
    for (const [b, row] of bandLevels(whiteNoise(2, 3 * rateHz), rateHz).entries()) {
      expect(row.quietDbFs === null, `band ${b}`).toBe(b < FIRST_WITH_QUIET)
      expect(row.busyDbFs === null, `band ${b}`).toBe(b < FIRST_WITH_QUIET)
      expect(row.steadyDbFs).not.toBeNull()
    }
  })

  it.each([0, 1, 100, 16_000])('silence of %i samples has no level in any band', (sampleCount) => {
    const rows = bandLevels(new Float32Array(sampleCount), rateHz)
    expect(rows.length).toBe(21)
    for (const key of KEYS) expect(told(rows, key)).toEqual(Array(21).fill(null))
  })

  it('a clip that is half digital silence has a mean and no quiet level', () => {
    const half = whiteNoise(3, 4 * rateHz).map((v, n) => (n < 2 * rateHz ? v : 0))
    const row = bandLevels(half, rateHz)[indexOf(1000)]!
    close(row.levelDbFs, whiteDb(indexOf(1000), rateHz) - 3.01, { abs: 0.5, because: 'half the power; 2 s of noise' })
    expect(row.quietDbFs).toBeNull()
  })

  it('no number that is not finite leaves, for any short clip, seed 5', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 12_000 }),
        fc.constantFrom(8000, 11_025, 48_000, 192_000),
        (length, rate) => {
          for (const row of bandLevels(whiteNoise(length, length), rate)) {
            for (const key of KEYS) expect(row[key] === null || Number.isFinite(row[key])).toBe(true)
          }
        },
      ),
      { seed: 5, numRuns: 40 },
    )
  })

  it('refuses samples that are not finite and a rate of nothing', () => {
    const broken = whiteNoise(4, rateHz)
    broken[8000] = Number.NaN
    expect(() => bandLevels(broken, rateHz)).toThrow('not finite')
    expect(() => bandLevels(new Float32Array(10), 0)).toThrow('sampleRateHz is 0')
  })
})
