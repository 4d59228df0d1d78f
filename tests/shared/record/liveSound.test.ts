import { describe, expect, it } from 'vitest'
import { levelWord, liveSpectrum } from '../../../shared/record/liveSound'
import { close } from '../../support/close'

/** Level of a root mean square in steps of 16 bits, as a power. */
const powerOf = (rms: number) => (rms / 32_768) ** 2

describe('a level in a word', () => {
  it('is good where a phone is as its maker must make it', () => {
    // Android Compatibility Definition 5.11 and 5.4.7: RMS 520 and 2500 of 32 768. [AndroidCDD]
    close(10 * Math.log10(powerOf(520)), -35.99, { abs: 0.005, because: 'rounded to two decimals' })
    close(10 * Math.log10(powerOf(2500)), -22.35, { abs: 0.005, because: 'rounded to two decimals' })
    for (const rms of [520, 2500]) expect(levelWord(powerOf(rms), (4 * rms) / 32_768)).toBe('good')
  })

  it('is faint where the steps of the recorder are heard, loud without room, overloaded at full scale, dead at none', () => {
    expect(levelWord(powerOf(2), 10 / 32_768)).toBe('faint')
    expect(levelWord(powerOf(10_000), 0.9)).toBe('loud')
    expect(levelWord(powerOf(520), 1)).toBe('overloaded')
    expect(levelWord(0, 0)).toBe('dead')
  })
})

describe('a live spectrum', () => {
  const bins = (levelDb: (hz: number) => number) =>
    Float32Array.from({ length: 2048 }, (_, bin) => levelDb((bin * 24_000) / 2048))

  it('is widest at the pitch of a tone, and names the part it is in', () => {
    for (const [hz, part] of [
      [100, 'rumble'],
      [420, 'gurgle'],
      [1500, 'ring'],
      [5000, 'hiss'],
    ] as const) {
      const { widths, loudest } = liveSpectrum(
        bins((f) => (Math.abs(f - hz) < 12 ? -30 : -120)),
        48_000,
        48,
      )
      const step = Math.floor((48 * Math.log(hz / 40)) / Math.log(8000 / 40))
      expect(Math.abs(widths.indexOf(Math.max(...widths)) - step)).toBeLessThanOrEqual(1)
      expect(loudest).toBe(part)
    }
  })

  it('is level for sound with as much power in every octave, and rises for white noise by 3 dB an octave', () => {
    const pink = liveSpectrum(
      bins((hz) => -60 - 10 * Math.log10(Math.max(hz, 5) / 1000)),
      48_000,
      24,
    ).widths
    const white = liveSpectrum(
      bins(() => -80),
      48_000,
      24,
    ).widths
    close(pink[20], pink[8]!, { abs: 0.01, because: 'bins are wide beside the low steps' })
    const octaves = Math.log2(200) * (12 / 24)
    close(white[20]! - white[8]!, (octaves * 10 * Math.log10(2)) / 90, {
      abs: 0.005,
      because: 'the length spans 90 dB',
    })
  })

  it('is thin and says nothing in silence', () => {
    const { widths, loudest } = liveSpectrum(
      bins(() => Number.NEGATIVE_INFINITY),
      48_000,
      10,
    )
    expect([widths.every((width) => width === 0), loudest]).toEqual([true, null])
  })
})
