import { describe, expect, it } from 'vitest'
import { InputError } from '../../../shared/base/errors'
import { thinSpectrum } from '../../../shared/spectrum/thinSpectrum'
import { close } from '../../support/close'

const of = (density: Float64Array, binWidthHz = 5) => ({ density, binWidthHz, segmentCount: 1 })
const options = { lowHz: 60, highHz: 4000, perOctave: 24 }

describe('a thinned spectrum', () => {
  it('of an even density is even', () => {
    const { levelDbPerHz } = thinSpectrum(of(new Float64Array(2000).fill(1e-6)), options)
    for (const level of levelDbPerHz) close(level, -60, { abs: 1e-9, because: 'a mean of equals' })
  })

  it('keeps to its limits and rises by about its step', () => {
    const { hz } = thinSpectrum(of(new Float64Array(2000).fill(1)), options)
    expect(hz[0]!).toBeGreaterThanOrEqual(60)
    expect(hz.at(-1)!).toBeLessThanOrEqual(4000)
    const high = hz.filter((f) => f > 1000)
    for (let i = 1; i < high.length - 1; i++) {
      close(high[i]! / high[i - 1]!, 2 ** (1 / 24), { rel: 0.02, because: 'steps end on whole bins' })
    }
    expect(hz.length).toBeLessThan(160)
  })

  it('counts every bin once: powers of the steps add up to the whole', () => {
    const density = Float64Array.from({ length: 2000 }, (_, k) => 1 + Math.sin(k))
    const { hz, levelDbPerHz } = thinSpectrum(of(density), options)
    let total = 0
    let first = 12
    for (const [i, middleHz] of hz.entries()) {
      const last = Math.round(2 * (middleHz / 5)) - first // steps touch, so their middles tell their ends
      total += 10 ** (levelDbPerHz[i]! / 10) * (last - first + 1)
      first = last + 1
    }
    let expected = 0
    for (let k = 12; k <= 800; k++) expected += density[k]!
    close(total, expected, { rel: 1e-9, because: 'only rounding' })
  })

  it('shows each bin by itself where bins are wider than a step', () => {
    const density = Float64Array.from({ length: 200 }, (_, k) => k + 1)
    const { hz, levelDbPerHz } = thinSpectrum(of(density, 20), { lowHz: 60, highHz: 200, perOctave: 24 })
    expect([...hz]).toEqual([60, 80, 100, 120, 140, 160, 180, 200])
    close(levelDbPerHz[0], 10 * Math.log10(4), { abs: 1e-12, because: 'bin 3' })
  })

  it('has a number for silence and nothing beyond the rate', () => {
    const { levelDbPerHz, hz } = thinSpectrum(of(new Float64Array(101)), { ...options, highHz: 8000 })
    expect(levelDbPerHz.every((level) => level === -240)).toBe(true)
    expect(hz.at(-1)!).toBeLessThanOrEqual(500)
  })

  it('refuses limits that do not rise', () => {
    expect(() => thinSpectrum(of(new Float64Array(9)), { ...options, lowHz: 0 })).toThrow(InputError)
  })
})
