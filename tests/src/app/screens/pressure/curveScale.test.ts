import { describe, expect, it } from 'vitest'
import { curveScale } from '../../../../../shared/pressure/curveScale'
import { clockText, gaugeText } from '../../../../../src/app/screens/pressure/pressurePart'
import { close } from '../../../../support/close'

const extent = (values: readonly number[], everyS = 60) => ({
  readings: values.map((value, i) => ({ timeS: everyS * i, value })),
  band: [],
  resolution: 0.1,
  leastHoldS: 300,
  widthPx: 320,
  heightPx: 240,
})

describe('the scales of the curve', () => {
  it('hold the time asked and every reading with its step', () => {
    const { x, y, left, right, top, bottom } = curveScale(extent([11, 10.4, 9.7]))
    expect([x(0), x(300)]).toEqual([left, right])
    expect(y(11.05)).toBeGreaterThanOrEqual(top)
    expect(y(9.65)).toBeLessThanOrEqual(bottom)
  })

  it('leave a needle that stays looking as if it stayed', () => {
    const { y, top, bottom } = curveScale(extent([11, 11, 11]))
    close((y(10.95) - y(11.05)) / (bottom - top), 1 / 6, { rel: 1e-9, because: 'six steps of the gauge fill it' })
  })

  it('label whole minutes and whole steps, few of each', () => {
    for (const scale of [curveScale(extent([11, 10, 5, 0], 200)), curveScale(extent(Array(90).fill(11)))]) {
      expect(scale.times.length).toBeLessThanOrEqual(6)
      expect(scale.values.length).toBeLessThanOrEqual(6)
      expect(scale.times.filter((timeS) => timeS % 60 !== 0)).toEqual([])
    }
  })
})

it('a clock shows minutes and seconds, a gauge the figures of its step', () => {
  expect([clockText(0), clockText(65.9), clockText(3605), clockText(-30)]).toEqual(['0:00', '1:05', '60:05', '-0:30'])
  expect([gaugeText(11, 0.1), gaugeText(75.8, 1), gaugeText(0.7, 0.01)]).toEqual(['11.0', '76', '0.70'])
})
