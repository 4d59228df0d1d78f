import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatNumber, formatQuantity } from '../../../shared/words/formatQuantity'

const FEET = { length: 'ft', pressure: 'psi' } as const
const BAR = { length: 'm', pressure: 'bar' } as const

describe('a number with its unit', () => {
  it('is told its unit by the end of its name', () => {
    expect(formatQuantity('along_m', 5.3096)).toBe('5.31 m')
    expect(formatQuantity('m', -0.004)).toBe('0.00 m')
    expect(formatQuantity('hz', 49.96)).toBe('50 Hz')
    expect(formatQuantity('slug_rate_hz', 0.84)).toBe('0.8 Hz')
    expect(formatQuantity('over_floor_db', 17.6)).toBe('18 dB')
    expect(formatQuantity('dip_db', -3.14)).toBe('-3.1 dB')
    expect(formatQuantity('level_dbfs', -55)).toBe('-55.0 dBFS')
    expect(formatQuantity('duration_s', 6)).toBe('6.0 s')
    expect(formatQuantity('decay_s', 0.0123)).toBe('0.012 s')
    expect(formatQuantity('share_percent', 12.4)).toBe('12 %')
    expect(formatQuantity('share_percent', 0.034)).toBe('0.03 %')
    expect(formatQuantity('air_kpa', 40)).toBe('40 kPa')
  })

  it('has no unit where the sentence names it: rates, counts, points', () => {
    expect(formatQuantity('rate_per_s', 38.2)).toBe('38')
    expect(formatQuantity('rate_per_s', 2.94)).toBe('2.9')
    expect(formatQuantity('point', 6)).toBe('6')
    expect(formatQuantity('level_steps', 1.25)).toBe('1.25')
    expect(formatQuantity('bubbling', 0.7)).toBe('0.70')
  })

  it('is no length when it is so much a metre', () => {
    expect(formatQuantity('dig_cost_per_m', 40)).toBe('40')
    expect(formatQuantity('times', 17.256)).toBe('17')
  })

  it('is in percent for a probability or a share, and never certain when it is not', () => {
    expect(formatQuantity('probability', 0.934)).toBe('93 %')
    expect(formatQuantity('window_probability', 0.8)).toBe('80 %')
    expect(formatQuantity('probability', 0.9999)).toBe('over 99 %')
    expect(formatQuantity('share', 0.0001)).toBe('under 1 %')
    expect([formatQuantity('probability', 0), formatQuantity('probability', 1)]).toEqual(['0 %', '100 %'])
  })

  it('names a one-third-octave band as the standards do', () => {
    // Exact mid-bands 1000 · 10^(x/10) beside the nominal ones of IEC 61260-1, annex E (from memory).
    const nominal = [63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150]
    for (const [i, hz] of nominal.entries()) {
      expect(formatQuantity('band_hz', 1000 * 10 ** ((i - 12) / 10))).toBe(`${hz} Hz`)
    }
  })
})

describe('the units of the reader', () => {
  it('may be feet, psi and bar', () => {
    // 1 ft = 0.3048 m and 1 psi = 6.894757 kPa: NIST SP 811, appendix B (from memory).
    expect(formatQuantity('along_m', 3.048, FEET)).toBe('10 ft')
    expect(formatQuantity('air_kpa', 68.94757, FEET)).toBe('10.0 psi')
    expect(formatQuantity('air_kpa', 40, BAR)).toBe('0.40 bar')
  })
})

describe('a length for a reader of feet', () => {
  it('is in feet and inches, to half an inch', () => {
    // 1 in = 25.4 mm exactly: NIST SP 811, appendix B (from memory).
    const inches = (feet: number, count: number) => formatQuantity('distance_m', (12 * feet + count) * 0.0254, FEET)
    expect(inches(1, 0.5)).toBe('1 ft 0 1/2 in')
    expect(inches(20, 9)).toBe('20 ft 9 in')
    expect(inches(0, 8.5)).toBe('8 1/2 in')
    expect(inches(0, 0.5)).toBe('1/2 in')
    expect(inches(0, 0)).toBe('0 ft')
    expect(inches(-3, -11)).toBe('-3 ft 11 in')
  })

  it('goes over to the next foot, and to none, where it is rounded so', () => {
    expect(formatQuantity('along_m', 0.3047, FEET)).toBe('1 ft')
    expect(formatQuantity('along_m', 6.0959, FEET)).toBe('20 ft')
    expect(formatQuantity('along_m', -0.003, FEET)).toBe('0 ft')
  })
})

it('never shows a minus before nothing (seed 14)', () => {
  fc.assert(
    fc.property(fc.double({ min: -2, max: 2, noNaN: true }), fc.integer({ min: 0, max: 4 }), (value, decimals) => {
      expect(formatNumber(value, decimals)).not.toMatch(/^-0(\.0*)?$/)
    }),
    { seed: 14 },
  )
})
