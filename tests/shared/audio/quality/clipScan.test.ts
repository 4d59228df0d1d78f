import { expect, it } from 'vitest'
import { bassPower } from '../../../../shared/audio/quality/bassPower'
import { clipScan } from '../../../../shared/audio/quality/clipScan'
import { powerToDb } from '../../../../shared/base/units'
import { close } from '../../../support/close'
import { noise } from '../sounds'

const sine = (hz: number, rateHz: number, amplitude = 1) =>
  Float32Array.from({ length: rateHz }, (_, i) => amplitude * Math.sin((2 * Math.PI * hz * i) / rateHz))
const mean = (values: ArrayLike<number>) => Array.from(values).reduce((sum, x) => sum + x, 0) / values.length

it.each([8000, 11_025, 44_100, 48_000, 192_000])(
  'has blocks of about 10 ms and means at about 3 kHz from %i Hz',
  (rateHz) => {
    const scan = clipScan(new Float32Array(rateHz), rateHz)
    close(scan.blocksPerS, 100, { rel: 0.15, because: 'whole samples' })
    close(scan.slowRateHz, 3000, { rel: 0.25, because: 'whole samples' })
    expect(scan.slow.length * scan.slowFactor).toBe(scan.power.length * scan.blockSamples)
    expect(scan.power.length).toBe(Math.floor(rateHz / scan.blockSamples))
  },
)

it('tells mean, power and extremes of each block, as they are worked out one by one', () => {
  const samples = noise('scan', 0.1, 0.1).map((x, i) => x + (i > 2000 ? 0.5 : 0))
  const scan = clipScan(samples, 48_000)
  for (let block = 0; block < scan.power.length; block++) {
    const part = Array.from(samples.subarray(block * 480, (block + 1) * 480))
    const average = mean(part)
    close(scan.mean[block], average, { abs: 1e-9, because: 'sums in another order' })
    close(scan.power[block], mean(part.map((x) => (x - average) ** 2)), { abs: 1e-9, because: 'sums in another order' })
    expect([scan.lowest[block], scan.highest[block]]).toEqual([Math.min(...part), Math.max(...part)])
    close(scan.slow[block * 30 + 7], mean(part.slice(7 * 16, 8 * 16)), { abs: 1e-7, because: 'Float32' })
  }
})

it('has the roughness of a tone at (2·sin(π·f / rate))⁴ of its power, across the seams of blocks too', () => {
  const scan = clipScan(sine(1000, 48_000), 48_000)
  const expected = 0.5 * (2 * Math.sin((Math.PI * 1000) / 48_000)) ** 4
  for (let block = 1; block < scan.power.length; block++) {
    close(scan.roughness[block], expected, { rel: 1e-3, because: 'Float32 samples' })
  }
})

it('is empty for a clip shorter than a block', () => {
  expect(clipScan(new Float32Array(100), 48_000).power.length).toBe(0)
  expect(bassPower(clipScan(new Float32Array(0), 48_000)).length).toBe(0)
})

it('the bass has a tone of 28 Hz whole, and one of 320 Hz or an offset not at all', () => {
  const bassDb = (samples: Float32Array) =>
    powerToDb(mean(bassPower(clipScan(samples, 48_000)).slice(50)) / 0.5) ?? -999
  close(bassDb(sine(28, 48_000)), 0, { abs: 0.2, because: 'both edges are 12 dB an octave away' })
  close(bassDb(sine(320, 48_000)), -24.1, {
    abs: 1,
    because: 'two octaves of 12.04 dB, and at a tenth of the rate a little more',
  })
  expect(bassDb(sine(28, 48_000, 1e-9).map((x) => x + 0.9))).toBeLessThan(-100)
})
