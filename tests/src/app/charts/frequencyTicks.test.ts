import { describe, expect, it } from 'vitest'
import { frequencyTicks, tickText } from '../../../../src/app/charts/frequencyTicks'

const WHOLE = { lowHz: 60, highHz: 8000 }

describe('numbers on a frequency axis', () => {
  it('are 1, 2, 5 on a desk and fewer on a phone', () => {
    expect(frequencyTicks(WHOLE, 640, () => 44)).toEqual([100, 200, 500, 1000, 2000, 5000])
    expect(frequencyTicks(WHOLE, 214, (text) => 9.5 * text.length + 6)).toEqual([100, 500, 1000, 5000])
    expect(frequencyTicks(WHOLE, 200, () => 30)).toEqual([100, 1000])
  })

  it('are finer when zoomed in', () => {
    expect(frequencyTicks({ lowHz: 400, highHz: 900 }, 300, () => 44)).toEqual([400, 500, 630, 800])
  })

  it.each([120, 250, 300, 500, 900, 1600])('never stand closer than they may on %d pixels', (axisPx) => {
    const ticks = frequencyTicks(WHOLE, axisPx, () => 24)
    const gaps = ticks.slice(1).map((hz, i) => (Math.log(hz / ticks[i]!) / Math.log(8000 / 60)) * axisPx)
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(24)
  })

  it('are written short', () => {
    expect([63, 500, 1000, 1250, 3150].map(tickText)).toEqual(['63', '500', '1k', '1.25k', '3.15k'])
  })
})
