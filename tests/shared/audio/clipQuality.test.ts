import { describe, expect, it } from 'vitest'
import { butterworth, filterInPlace } from '../../../shared/audio/biquad'
import { clipQuality } from '../../../shared/audio/clipQuality'
import { resample } from '../../../shared/audio/resample'
import { Random } from '../../../shared/base/random'
import { close } from '../../support/close'
import { filled } from '../../support/filled'
import {
  brownNoise,
  bubbling,
  clipOf,
  knock,
  laid,
  noise,
  quantised,
  RATE_HZ,
  rmsOf,
  scaled,
  speech,
  sum,
} from './sounds'

const PCM16 = { kind: 'pcm', bits: 16 } as const
const judge = (samples: Float32Array, encoding?: Parameters<typeof clipOf>[2], rateHz = RATE_HZ) =>
  clipQuality(samples, rateHz, clipOf(samples, rateHz, encoding))
const named = (samples: Float32Array, encoding?: Parameters<typeof clipOf>[2], rateHz = RATE_HZ) =>
  judge(samples, encoding, rateHz).map(({ key, severity }) => `${key} ${severity}`)
const sine = (hz: number, amplitude: number, durationS: number) =>
  filled(durationS * RATE_HZ, (i) => amplitude * Math.sin((2 * Math.PI * hz * i) / RATE_HZ))
const FLOOR = noise('floor', 0.01, 8)

describe('nothing is wrong with clean bubbling in noise', () => {
  it.each([0, 20, 40, 60])(
    'at %i dB over the noise, many bubbles or few, at any gain, in 16 bits and in floats',
    (snrDb) => {
      for (const perS of [1, 8, 40]) {
        for (const colour of [noise, brownNoise]) {
          const seed = `${snrDb}/${perS}`
          const sound = sum(bubbling(seed, perS, 6), colour(seed, 0.1 * 10 ** (-snrDb / 20), 6))
          const at = (levelDbFs: number) => scaled(sound, 10 ** (levelDbFs / 20) / rmsOf(sound))
          // −55 dBFS and less is common in the field; 16 bits carry it.
          for (const levelDbFs of [-30, -55]) expect(named(quantised(at(levelDbFs), 16), PCM16)).toEqual([])
          for (const levelDbFs of [-20, -100]) expect(named(at(levelDbFs))).toEqual([])
        }
      }
    },
  )
  it.each([8000, 11_025, 16_000, 44_100, 96_000, 192_000])('at %i Hz', (rateHz) => {
    const sound = sum(bubbling('rate', 8, 5, rateHz), noise('rate', 0.02, 5, rateHz))
    expect(named(scaled(sound, 0.2), undefined, rateHz)).toEqual([])
  })
})

describe('too short', () => {
  it('below 1 s is spoilt, below 3 s weak', () => {
    expect(judge(noise('a', 0.1, 0.99))).toEqual([
      { key: 'too_short', severity: 'spoilt', values: { duration_s: 0.99 } },
    ])
    expect(named(noise('a', 0.1, 1))).toEqual(['too_short weak'])
    expect(named(noise('a', 0.1, 2.9))).toEqual(['too_short weak'])
    expect(named(noise('a', 0.1, 3))).toEqual([])
  })
  it('is all that is said of no samples at all', () => {
    expect(judge(new Float32Array(0))).toEqual([{ key: 'too_short', severity: 'spoilt', values: { duration_s: 0 } }])
  })
})

describe('silent', () => {
  it('is spoilt, and nothing else is said: zeros, a constant, idle dither with an offset', () => {
    const random = new Random('dither')
    const dither = Float32Array.from(
      { length: 4 * RATE_HZ },
      () => Math.round(40.3 + random.uniform() - random.uniform()) / 32768,
    )
    for (const samples of [new Float32Array(4 * RATE_HZ), new Float32Array(4 * RATE_HZ).fill(0.25), dither]) {
      expect(judge(samples, PCM16)).toEqual([{ key: 'silent', severity: 'spoilt', values: { share_percent: 100 } }])
    }
    expect(named(dither)).toEqual(['silent spoilt']) // the same grid, handed over as floats
  })
  it('is weak when the sound is away for part of the time, with the share', () => {
    const samples = noise('part', 0.1, 8).fill(0, 0, 2 * RATE_HZ)
    expect(judge(samples, PCM16)).toEqual([{ key: 'silent', severity: 'weak', values: { share_percent: 25 } }])
    expect(named(noise('part', 0.1, 8).fill(0, 0, RATE_HZ / 2))).toEqual([])
  })
  it('is not said of floats at −90 dBFS, nor of 24 bits at −110', () => {
    expect(named(noise('low', 10 ** (-90 / 20), 4))).toEqual([])
    expect(named(quantised(noise('low', 10 ** (-110 / 20), 4), 24), { kind: 'pcm', bits: 24 })).toEqual([])
  })
  it('is said of floats below the last bit of any converter', () => {
    expect(named(noise('none', 1e-9, 4))).toEqual(['silent spoilt'])
  })
})

describe('faint', () => {
  const low = noise('faint', 1.5 / 32768, 4)
  it('is said when the steps of the converter are heard, with the level', () => {
    const [problem] = judge(quantised(low, 16), PCM16)
    expect(problem).toMatchObject({ key: 'faint', severity: 'weak' })
    close(problem!.values.level_dbfs as number, 20 * Math.log10(1.53 / 32768), {
      abs: 0.5,
      because: 'the noise and a twelfth of a step squared, by the loudest tenth of the blocks',
    })
  })
  it('is found although 16 bits were handed over as floats or padded to 24', () => {
    expect(named(quantised(low, 16))).toEqual(['faint weak'])
    expect(named(quantised(low, 16), { kind: 'pcm', bits: 24 })).toEqual(['faint weak'])
  })
  it('is not said of the same level in finer steps, of −55 dBFS in 16 bits, or of a loud clip in 8', () => {
    expect(named(low)).toEqual([])
    expect(named(quantised(low, 24), { kind: 'pcm', bits: 24 })).toEqual([])
    expect(named(quantised(noise('phone', 10 ** (-55 / 20), 4), 16), PCM16)).toEqual([])
    expect(named(quantised(noise('loud', 0.1, 4), 8), { kind: 'pcm', bits: 8 })).toEqual([])
  })
})

describe('clipped', () => {
  const cut = (samples: Float32Array, limit: number) => samples.map((x) => Math.max(-limit, Math.min(limit, x)))
  it('a sine driven 6 dB too high is flat for two thirds of its time, and spoilt, at whatever level it was cut', () => {
    // Flat while |sin| > 1/2: 1 − (2/π)·asin(1/2) = 2/3.
    for (const gain of [1, 0.1]) {
      const [problem] = judge(scaled(cut(sine(440, 2, 4), 1), gain), PCM16)
      expect(problem).toMatchObject({ key: 'clipped', severity: 'spoilt' })
      close(problem!.values.share_percent as number, 200 / 3, { rel: 0.02, because: 'whole samples' })
    }
  })
  it('noise cut at 2.5 of its standard deviations is weak, at 1.5 spoilt', () => {
    const soft = resample(resample(noise('cut', 0.3, 4), RATE_HZ, 8000), 8000, RATE_HZ) // phones do not bring white noise
    const rms = 0.3 * Math.sqrt(8000 / RATE_HZ)
    expect(named(cut(soft, 2.5 * rms)).filter((name) => name.startsWith('clipped'))).toEqual(['clipped weak'])
    expect(named(cut(soft, 1.2 * rms)).filter((name) => name.startsWith('clipped'))).toEqual(['clipped spoilt'])
  })
  it('one knock that hits the limit is only noted', () => {
    const samples = cut(laid(FLOOR, knock(), [3], 3), 1)
    expect(named(samples, PCM16)).toContain('clipped note')
  })
  it('is not said of what just fits: a full-scale sine however slow, noise, a coarse quiet grid', () => {
    for (const hz of [40, 440, 5000]) expect(named(quantised(sine(hz, 1, 4), 16), PCM16)).toEqual([])
    expect(named(quantised(noise('fits', 0.2, 4), 16), PCM16)).toEqual([])
    expect(named(quantised(sum(sine(120, 12 / 32768, 4), noise('few', 2 / 32768, 4)), 16), PCM16)).toEqual([])
  })
})

describe('an offset', () => {
  it('is noted when it is half the sound or a twentieth of full scale, with its sign', () => {
    const small = noise('offset', 0.01, 4)
    expect(named(small.map((x) => x + 0.004))).toEqual([])
    expect(judge(small.map((x) => x - 0.006))[0]).toMatchObject({ key: 'dc_offset', severity: 'note' })
    close(judge(small.map((x) => x - 0.006))[0]!.values.offset_percent as number, -0.6, { abs: 0.01, because: 'noise' })
    expect(named(noise('loud', 0.2, 4).map((x) => x + 0.06))).toEqual(['dc_offset note'])
  })
})

describe('mains hum', () => {
  const comb = (hz: number, harmonics: readonly number[], level: number) =>
    sum(...harmonics.map((h) => sine(h * hz, level / h, 6)))
  it.each([50, 60])('of %i Hz is noted though the bubbling is louder, and though the mains is off by 0.15 Hz', (hz) => {
    const ground = sum(bubbling('hum', 6, 6), noise('hum', 0.05, 6))
    for (const off of [0, 0.15]) {
      expect(judge(sum(ground, comb(hz + off, [1, 2, 3, 4, 5], 0.02)))).toEqual([
        { key: 'mains_hum', severity: 'note', values: { hz } },
      ])
    }
  })
  it('is not said of a single tone, of a motor at 25 or 30 Hz, or of a clip under 3 s', () => {
    const ground = noise('motor', 0.01, 6)
    expect(named(sum(ground, sine(100, 0.05, 6)))).toEqual([])
    for (const hz of [25, 30]) expect(named(sum(ground, comb(hz, [1, 2, 3, 4, 5, 6, 7, 8], 0.05)))).toEqual([])
    const short = sum(ground, comb(50, [1, 2, 3, 4], 0.05)).slice(0, 2.5 * RATE_HZ)
    expect(named(short)).toEqual(['too_short weak'])
  })
})

describe('knocks', () => {
  const times = (count: number) => Array.from({ length: count }, (_, i) => 0.5 + (7 * i) / count)
  it('a few are noted and counted, more are weak, most of the time is spoilt', () => {
    expect(judge(laid(FLOOR, knock(), times(2), 1))).toEqual([
      { key: 'knocked', severity: 'note', values: { count: 2, share_percent: expect.any(Number) } },
    ])
    expect(named(laid(FLOOR, knock(), times(7), 1))).toEqual(['knocked weak'])
    expect(named(laid(FLOOR, knock(), times(42), 1)).filter((name) => name.startsWith('knocked'))).toEqual([
      'knocked spoilt',
    ])
  })
  it('are found at any gain', () => {
    const samples = laid(FLOOR, knock(), times(4), 1)
    for (const gain of [1e-4, 0.1, 10]) {
      expect(judge(scaled(samples, gain))).toEqual([
        expect.objectContaining({ key: 'knocked', values: { count: 4, share_percent: expect.any(Number) } }),
      ])
    }
  })
  it('loud single bubbles are none', () => {
    expect(named(sum(scaled(bubbling('single', 0.7, 8), 3), FLOOR))).toEqual([])
  })
})

describe('wind', () => {
  const rumble = (name: string, rms: number) => {
    const samples = brownNoise(name, rms, 8)
    filterInPlace(samples, butterworth('lowpass', 60, RATE_HZ))
    return samples
  }
  const gusts = (samples: Float32Array) => samples.map((x, i) => x * 10 ** Math.sin((2 * Math.PI * 0.4 * i) / RATE_HZ))
  it('is rumble that swells and dies over all the rest', () => {
    const [problem] = judge(sum(gusts(rumble('wind', 0.02)), noise('wind', 0.0002, 8)))
    expect(problem).toMatchObject({ key: 'windy', severity: 'weak' })
    expect(problem!.values.swell_db).toBeGreaterThan(10)
    expect(problem!.values.share_percent).toBeGreaterThan(75)
  })
  it('is not said of steady rumble, or of gusts that leave the bubbling loud', () => {
    expect(named(sum(rumble('road', 0.05), noise('road', 0.0005, 8)))).toEqual([])
    expect(
      named(sum(gusts(rumble('lull', 0.005)), scaled(bubbling('lull', 8, 8), 0.2), noise('lull', 0.001, 8))),
    ).toEqual([])
  })
})

describe('a voice', () => {
  const ground = noise('room', 0.002, 8)
  it('is weak when it fills the clip and noted when there is little of it', () => {
    expect(named(sum(speech(8), ground))).toEqual(['voice weak'])
    expect(named(sum(speech(8).fill(0, 3 * RATE_HZ), ground))).toEqual(['voice note'])
  })
  it('is not a motor with the overtones of one', () => {
    const motor = sum(...[1, 2, 3, 4, 5, 6].map((h) => sine(130 * h, 0.05, 8)))
    expect(named(sum(motor, ground))).toEqual([])
  })
})

describe('automatic gain', () => {
  /** Loud bursts over noise; the gain drops at each and creeps back by 4 dB a second, as a phone does it. */
  const ridden = (dropDb: number) => {
    const samples = laid(noise('agc', 0.004, 12), noise('burst', 0.3, 0.2), [1.5, 4.5, 7.5, 10], 1)
    let gainDb = 0
    return samples.map((x, i) => {
      const inBurst = [1.5, 4.5, 7.5, 10].some((at) => i >= at * RATE_HZ && i < (at + 0.2) * RATE_HZ)
      gainDb = inBurst ? Math.max(-dropDb, gainDb - 200 / RATE_HZ) : Math.min(0, gainDb + 4 / RATE_HZ)
      return x * 10 ** (gainDb / 20)
    })
  }
  const riding = (samples: Float32Array) => judge(samples).filter(({ key }) => key === 'gain_riding')
  it('is seen by the floor that ducks after loud moments and creeps back', () => {
    const [problem] = riding(ridden(10))
    expect(problem).toMatchObject({ severity: 'weak', values: { count: 4 } })
    close(problem!.values.dip_db as number, 9, { abs: 1.5, because: 'the first look is 0.2 s after the burst' })
  })
  it('is not said when the gain stood still', () => {
    expect(riding(ridden(0))).toEqual([])
  })
})

describe('a sharp upper edge', () => {
  const through = (samples: Float32Array, rateHz: number) =>
    resample(resample(samples, RATE_HZ, rateHz), rateHz, RATE_HZ)
  it('of a telephone is noted where it lies; one in the bands that place the leak is weak', () => {
    const [phone] = judge(through(FLOOR, 8000))
    expect(phone).toMatchObject({ key: 'band_limited', severity: 'note' })
    close(phone!.values.hz as number, 3800, { abs: 200, because: 'looked for in steps of 150 Hz' })
    const [narrow] = judge(through(FLOOR, 3000))
    expect(narrow).toMatchObject({ key: 'band_limited', severity: 'weak' })
    close(narrow!.values.hz as number, 1425, { abs: 150, because: 'looked for in steps of 150 Hz' })
  })
  it('is not what soil does, however steep, nor a lone tone, nor a wideband codec', () => {
    // 40 and 80 dB a kilohertz, ending in the recorder's noise.
    for (const keepHz of [217, 109]) {
      const soil = noise('soil', 1e-5, 4)
      for (let hz = 60; hz < 4100; hz += 37) {
        const [amplitude, turn] = [0.1 * Math.exp(-hz / keepHz), (2 * Math.PI * hz) / RATE_HZ]
        for (let n = 0; n < soil.length; n++) soil[n]! += amplitude * Math.sin(turn * n)
      }
      expect(named(soil)).toEqual([])
    }
    expect(named(sum(sine(1500, 0.1, 4), noise('tone', 1e-4, 4)))).toEqual([])
    expect(named(through(FLOOR, 16_000))).toEqual([])
  })
})

describe('lossy', () => {
  it('is left to whoever decoded the clip, as some packed files have lost nothing', () => {
    expect(named(FLOOR, { kind: 'decoded', bits: 16 })).toEqual([])
  })
})
