import { expect, it } from 'vitest'
import { InputError } from '../../../shared/base/errors'
import { Random } from '../../../shared/base/random'
import { fourier } from '../../../shared/synth/fourier'
import { close } from '../../support/close'

const random = new Random('fourier')
const real = Float64Array.from({ length: 64 }, () => random.normal())
const imaginary = Float64Array.from({ length: 64 }, () => random.normal())

it('agrees with the transform by its definition', () => {
  const re = real.slice()
  const im = imaginary.slice()
  fourier(re, im, -1)
  for (let k = 0; k < 64; k++) {
    let sumRe = 0
    let sumIm = 0
    for (let n = 0; n < 64; n++) {
      const angle = (-2 * Math.PI * k * n) / 64
      sumRe += real[n]! * Math.cos(angle) - imaginary[n]! * Math.sin(angle)
      sumIm += real[n]! * Math.sin(angle) + imaginary[n]! * Math.cos(angle)
    }
    close(re[k], sumRe, { abs: 1e-12, because: 'rounding of 64 terms' })
    close(im[k], sumIm, { abs: 1e-12, because: 'rounding of 64 terms' })
  }
})

it('comes back after both directions, times the length', () => {
  const re = real.slice()
  const im = imaginary.slice()
  fourier(re, im, -1)
  fourier(re, im, 1)
  for (let n = 0; n < 64; n++) close(re[n]! / 64, real[n]!, { abs: 1e-14, because: 'rounding' })
})

it('refuses lengths that are no power of two', () => {
  expect(() => fourier(new Float64Array(12), new Float64Array(12), -1)).toThrow(InputError)
  expect(() => fourier(new Float64Array(8), new Float64Array(16), -1)).toThrow(/8 and 16/)
})
