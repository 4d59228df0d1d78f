import { expect, it } from 'vitest'
import { PASCALS_PER_PSI } from '../../../shared/base/units'
import { minnaertPitchHz, minnaertPitchWithTensionHz, minnaertRadiusM } from '../../../shared/bubbles/minnaert'
import { close } from '../../support/close'

const ATM = 101_325

it('multiplies pitch and radius to 3.2862 m/s at one atmosphere in fresh water', () => {
  // Minnaert's formula by hand: √(3·1.4·101325/998.2)/2π. [Minnaert1933]
  close(minnaertPitchHz(1), 3.2862, { abs: 1e-4, because: 'printed to four digits' })
})

it('gives the textbook 3.26 m/s with a pressure of 100 kPa and a density of 1000', () => {
  const product = minnaertPitchHz(1, { pressurePa: 1e5, densityKgPerM3: 1000 })
  close(product, 3.26171, { abs: 1e-4, because: 'the often quoted 3.26 to two digits more' })
})

it('lets a bubble of 3 mm ring at 1095.4 Hz', () => {
  close(minnaertPitchHz(0.003), 1095.4, { abs: 0.1, because: 'printed to a tenth of a hertz' })
})

it('agrees with the pitches asserted by an independent ocean-acoustics library within 1.2 %', () => {
  // UnderwaterAcoustics.jl, tests of bubbleresonance: 32 500 Hz for 100 µm, 101 562.5 Hz for 32 µm, and 45 962 Hz for
  // 100 µm at 10 m, from the rule f = (3.25/a)·√(1 + 0.1·depth): 1 bar at the surface and 1 bar more each 10 m.
  const rule = (radiusM: number, depthM: number) => (3.25 / radiusM) * Math.sqrt(1 + 0.1 * depthM)
  close(rule(100e-6, 0), 32_500, { abs: 0.5, because: 'the library prints whole hertz' })
  close(rule(32e-6, 0), 101_562.5, { abs: 0.5, because: 'the library prints it' })
  close(rule(100e-6, 10), 45_962, { abs: 0.5, because: 'the library prints whole hertz' })
  for (const [radiusM, depthM, pitchHz] of [
    [100e-6, 0, 32_500],
    [32e-6, 0, 101_562.5],
    [100e-6, 10, 45_962],
  ] as const) {
    const pressurePa = ATM * (1 + 0.1 * depthM)
    close(minnaertPitchHz(radiusM, { pressurePa }), pitchHz, {
      rel: 0.012,
      because: '3.25 is 3.286 rounded for sea water',
    })
  }
})

it('rings 1.53653 times higher at 20 psi above the atmosphere', () => {
  const ratio = minnaertPitchHz(0.003, { pressurePa: ATM + 20 * PASCALS_PER_PSI }) / minnaertPitchHz(0.003)
  close(ratio, 1.53653, { abs: 1e-5, because: 'the square root of the pressure ratio, printed to five digits' })
})

it('gives the radius back from the pitch', () => {
  for (const radiusM of [0.0005, 0.003, 0.02])
    close(minnaertRadiusM(minnaertPitchHz(radiusM)), radiusM, { rel: 1e-12, because: 'exact inverse' })
})

it('is raised by surface tension 0.546 % at 0.1 mm and 0.055 % at 1 mm', () => {
  const ratio = (radiusM: number) => minnaertPitchWithTensionHz(radiusM) / minnaertPitchHz(radiusM)
  close(ratio(1e-4), 1.00546, { abs: 1e-5, because: "Leighton's form with σ 0.0728 N/m" })
  close(ratio(1e-3), 1.00055, { abs: 1e-5, because: "Leighton's form with σ 0.0728 N/m" })
})

it('refuses a bubble without size and a vacuum', () => {
  expect(() => minnaertPitchHz(0)).toThrow('radiusM is 0; must be > 0')
  expect(() => minnaertRadiusM(Number.NaN)).toThrow('pitchHz is NaN')
  expect(() => minnaertPitchHz(0.003, { pressurePa: -1 })).toThrow('pressurePa is -1')
})
