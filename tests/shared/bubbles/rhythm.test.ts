import { describe, expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { regularity, slugRateHz } from '../../../shared/bubbles/rhythm'
import { close } from '../../support/close'

function train(count: number, gapOf: (i: number) => number): number[] {
  const times = [0]
  for (let i = 1; i < count; i++) times.push(times[i - 1]! + gapOf(i))
  return times
}

describe('regularity', () => {
  it('is 1 for a clockwork train and nearly so for one that slowly quickens', () => {
    close(regularity(train(50, () => 0.1)), 1, { abs: 1e-9, because: 'every gap equals the next' })
    close(regularity(train(50, (i) => 0.1 * 0.99 ** i)), 1, { abs: 1e-3, because: 'neighbouring gaps differ by 1 %' })
  })

  it('is by hand 1/4 for gaps that double and halve in turns', () => {
    // Each pair differs by 1/3 of its sum, Lv = 3·(1/3)² = 1/3; with 1 and 3: 1/2, Lv = 3/4, so 1/4.
    close(regularity(train(40, (i) => (i % 2 === 0 ? 1 : 3))), 0.25, { abs: 1e-9, because: 'by hand' })
    close(regularity(train(40, (i) => (i % 2 === 0 ? 1 : 2))), 2 / 3, { abs: 1e-9, because: 'by hand' })
  })

  it('has a mean local variation of 1 for random arrivals, so that it stays near 0', () => {
    const random = new Random('poisson')
    close(regularity(train(20_000, () => random.exponential(7))), 0, {
      abs: 0.03,
      because: 'Lv of a Poisson process is 1 on average [ShinomotoShimaTanji2003]; 20 000 gaps scatter by 0.007',
    })
  })

  it('stays near 0 for random arrivals of which those within the dead time are lost', () => {
    const random = new Random('dead time')
    const kept: number[] = []
    for (const t of train(40_000, () => random.exponential(60)))
      if (kept.length === 0 || t - kept[kept.length - 1]! > 0.012) kept.push(t)
    expect(regularity(kept, 0)!).toBeGreaterThan(0.3)
    close(regularity(kept, 0.012), 0, { abs: 0.03, because: 'what is left of a gap is exponential again' })
  })

  it('falls as the clock jitters more', () => {
    const values = [0.02, 0.1, 0.2, 0.4].map((jitter) => {
      const random = new Random('jitter')
      return regularity(train(2000, () => 0.1 * random.uniform(1 - jitter * 2, 1 + jitter * 2)))!
    })
    for (let i = 1; i < values.length; i++) expect(values[i]!).toBeLessThan(values[i - 1]!)
    expect(values[0]!).toBeGreaterThan(0.99)
  })

  it('says nothing of five bursts', () => {
    expect(regularity([1, 2, 3, 4, 5])).toBeNull()
    expect(regularity([1, 2, 3, 4, 5, 6])).toBe(1)
  })
})

describe('the rate of slugs', () => {
  const swelling = (rateHz: number, depth: number, durationS: number) => {
    const random = new Random(`swell/${rateHz}/${depth}`)
    const times: number[] = []
    for (let t = random.exponential(20); t < durationS; t += random.exponential(20))
      if (random.chance(0.5 * (1 + depth * Math.sin(2 * Math.PI * rateHz * t)))) times.push(t)
    return times
  }

  it.each([0.3, 0.7, 1.3, 2.4])('is found for bubbling that swells and fades at %f Hz', (rateHz) => {
    close(slugRateHz(swelling(rateHz, 1, 20), 20), rateHz, { abs: 0.05, because: 'the line is 1/20 s wide' })
  })

  it('is null for even bubbling in 38 of 40 clips at least', () => {
    const random = new Random('even')
    let named = 0
    for (let clip = 0; clip < 40; clip++) {
      const times: number[] = []
      for (let t = random.exponential(10); t < 15; t += random.exponential(10)) times.push(t)
      if (slugRateHz(times, 15) !== null) named++
    }
    expect(named).toBeLessThanOrEqual(2)
  })

  it('is null when there are too few rings, or the clip is too short for three swells', () => {
    expect(slugRateHz([1, 2, 3, 4, 5], 10)).toBeNull()
    expect(slugRateHz(swelling(2, 1, 1), 1)).toBeNull()
  })
})
