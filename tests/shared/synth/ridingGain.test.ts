import { expect, it } from 'vitest'
import { ridingGain } from '../../../shared/synth/ridingGain'
import { close } from '../../support/close'

it('leaves the resting level alone', () => {
  expect([...ridingGain(new Float64Array(5).fill(2), 2, 0.05)]).toEqual([1, 1, 1, 1, 1])
})

it('takes back half the decibels of a loud moment at once and recovers within seconds', () => {
  const power = new Float64Array(260).fill(1)
  power[20] = 100
  const gain = ridingGain(power, 1, 0.05)
  close(10 * Math.log10(gain[20]!), -10, { abs: 1e-9, because: 'half of 20 dB' })
  expect(gain[19]).toBe(1)
  expect(gain[40]!).toBeGreaterThan(gain[20]!)
  close(10 * Math.log10(gain[60]!), -10 + (10 * Math.LOG10E) / 2, {
    abs: 0.01,
    because: '2 s later: one time constant',
  })
  expect(gain[259]).toBe(1)
})
