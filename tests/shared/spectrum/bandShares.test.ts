import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bandShares } from '../../../shared/spectrum/bandShares'
import { close } from '../../support/close'

const sum = (values: ArrayLike<number>) => Array.from(values).reduce((total, v) => total + v, 0)

describe('bandShares', () => {
  it('shares a bin that an edge cuts in proportion', () => {
    // Bins of 10 Hz: bin 3 reaches from 25 to 35 Hz, bin 6 from 55 to 65 Hz.
    const { firstBin, shares } = bandShares({ lowerHz: 32, upperHz: 57 }, 10)
    expect(firstBin).toBe(3)
    ;[0.3, 1, 1, 0.2].forEach((share, i) => {
      close(shares[i], share, { abs: 1e-12, because: 'worked by hand' })
    })
    expect(shares.length).toBe(4)
  })

  it('holds a band that lies within one bin', () => {
    const { firstBin, shares } = bandShares({ lowerHz: 98, upperHz: 103 }, 10)
    expect([firstBin, shares.length]).toEqual([10, 1])
    close(shares[0], 0.5, { abs: 1e-12, because: '5 of 10 Hz' })
  })

  it('sums to the width in bins, and bands that touch share every bin out exactly once, seed 9', () => {
    const positive = (max: number) => fc.double({ min: 0.5, max, noNaN: true })
    fc.assert(
      fc.property(positive(400), positive(300), positive(300), positive(20), (lowerHz, widthHz, nextHz, binHz) => {
        const low = bandShares({ lowerHz, upperHz: lowerHz + widthHz }, binHz)
        const high = bandShares({ lowerHz: lowerHz + widthHz, upperHz: lowerHz + widthHz + nextHz }, binHz)
        close(sum(low.shares), widthHz / binHz, { abs: 1e-9, because: 'rounding' })
        const total = new Map<number, number>()
        for (const band of [low, high]) {
          band.shares.forEach((share, i) => {
            total.set(band.firstBin + i, (total.get(band.firstBin + i) ?? 0) + share)
          })
        }
        const bins = [...total.keys()].sort((a, b) => a - b)
        for (const bin of bins.slice(1, -1)) {
          if ((bin - 0.5) * binHz < lowerHz || (bin + 0.5) * binHz > lowerHz + widthHz + nextHz) continue
          close(total.get(bin), 1, { abs: 1e-9, because: 'nothing lost, nothing twice' })
        }
      }),
      { seed: 9, numRuns: 200 },
    )
  })

  it('refuses edges out of order', () => {
    expect(() => bandShares({ lowerHz: 50, upperHz: 40 }, 10)).toThrow('out of order')
    expect(() => bandShares({ lowerHz: 0, upperHz: 40 }, 10)).toThrow('out of order')
    expect(() => bandShares({ lowerHz: 10, upperHz: 40 }, 0)).toThrow('out of order')
  })
})
