import { expect, it } from 'vitest'
import { bubbleDecayPerS, qualityFactor, sonarQualityFactor } from '../../../shared/bubbles/bubbleDecay'
import { minnaertPitchHz } from '../../../shared/bubbles/minnaert'
import { close } from '../../support/close'

it('damps a bubble of 3 mm by 87.151 a second, a quality factor of 36.05 at the pitch 3/r', () => {
  // d = 0.13/r + 0.0072·r^(−3/2); the model takes f = 3/r. [vandenDoel2005]
  close(bubbleDecayPerS(0.003), 87.151, { abs: 0.01, because: 'formula by hand' })
  close(qualityFactor(3 / 0.003, bubbleDecayPerS(0.003)), 36.05, { abs: 0.01, because: 'formula by hand' })
})

it('has the decays of the published model from 1 to 10 mm', () => {
  const table = [
    [1, 357.68],
    [2, 145.5],
    [3, 87.15],
    [5, 46.37],
    [10, 20.2],
  ] as const
  for (const [radiusMm, decayPerS] of table)
    close(bubbleDecayPerS(radiusMm / 1000), decayPerS, { abs: 0.01, because: 'printed to two digits' })
})

it('agrees with the damping used for sonar within 11 % from 1 to 5 mm, both at the pitch of Minnaert', () => {
  // δ = 0.0255·f^(1/3), f in kHz, after Devin and Medwin [Medwin1977], against [vandenDoel2005].
  for (const radiusMm of [1, 1.5, 2, 3, 4, 5]) {
    const pitchHz = minnaertPitchHz(radiusMm / 1000)
    const q = qualityFactor(pitchHz, bubbleDecayPerS(radiusMm / 1000))
    close(q, sonarQualityFactor(pitchHz), { rel: 0.11, because: 'two independent sources of the damping' })
  }
})

it('keeps the quality factor of a bubble between 25 and 60 over the sizes heard through soil', () => {
  for (const radiusMm of [1, 2, 4, 8, 16]) {
    const q = qualityFactor(minnaertPitchHz(radiusMm / 1000), bubbleDecayPerS(radiusMm / 1000))
    expect(q).toBeGreaterThan(25)
    expect(q).toBeLessThan(60)
  }
})

it('refuses bubbles smaller than the model was made for', () => {
  expect(() => bubbleDecayPerS(0.0001)).toThrow('radiusM is 0.0001; must be at least 0.00015')
})
