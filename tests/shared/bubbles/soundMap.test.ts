import { expect, it } from 'vitest'
import { Random } from '../../../shared/base/random'
import { DB_MEAN_BIAS, floorRow, powerDb, soundMap } from '../../../shared/bubbles/soundMap'
import { close } from '../../support/close'
import { whiteNoise } from '../../support/plantedRings'

it('has a bias of 2.507 dB: the mean of −10·log10 of an exponential variable of mean 1', () => {
  // Naive: the mean over the quantiles of the exponential distribution.
  let sum = 0
  const count = 200_000
  for (let i = 0; i < count; i++) sum += powerDb(-Math.log(1 - (i + 0.5) / count))
  close(DB_MEAN_BIAS, -sum / count, { abs: 1e-3, because: 'mid-point rule with a logarithmic end' })
})

it('puts a tone in its column at every rate', () => {
  for (const sampleRateHz of [8000, 11_025, 44_100, 48_000]) {
    const samples = Float32Array.from({ length: sampleRateHz }, (_, i) =>
      Math.sin((2 * Math.PI * 1000 * i) / sampleRateHz),
    )
    const map = soundMap(samples, sampleRateHz)
    const row = map.power.subarray(50 * map.binCount, 51 * map.binCount)
    const top = row.indexOf(Math.max(...row))
    close((map.firstBin + top) * map.binWidthHz, 1000, { abs: map.binWidthHz / 2, because: 'the nearest column' })
  }
})

it('has a floor that reads the mean power of even noise', () => {
  const map = soundMap(whiteNoise(8 * 16_000, new Random('floor')), 16_000)
  const middle = Math.floor(map.frameCount / 2)
  let mean = 0
  for (const power of map.power) mean += power / map.power.length
  let floorDb = 0
  for (let k = 0; k < map.binCount; k++) floorDb += powerDb(map.floor[floorRow(map, middle) + k]!) / map.binCount
  close(floorDb, powerDb(mean), { abs: 0.3, because: 'some 4 000 independent cells, each scattering by 5.6 dB' })
})

it('is the same map at any level, save for the unit', () => {
  const samples = whiteNoise(16_000, new Random('level'))
  const loud = soundMap(samples, 16_000)
  const faint = soundMap(
    samples.map((value) => value * 2 ** -40),
    16_000,
  )
  expect(faint.power).toEqual(loud.power)
})
